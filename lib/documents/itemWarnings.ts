import type { Item } from '../catalogue/item';
import { SIDE_WORDS } from '../wording/catalogue';
import { itemWarningWords as words } from '../wording/paper';
import { type TextLine, text } from './sheet';

/**
 * What must be seen beside a name before it is taken or put back: its side, and that another item looks like it. Refills
 * of left, right and look-alike items need two people (domain: when a set may go).
 */
export function itemWarnings(item: Item | undefined): TextLine[] {
  if (!item) return [];
  const sided = item.side === 'left' || item.side === 'right';
  const lookAlike = item.kind === 'plate' && item.lookAlikeOf !== null;
  return [
    ...(sided && item.side ? [text(SIDE_WORDS[item.side].toUpperCase(), 'body', true)] : []),
    ...(lookAlike ? [text(words.lookAlike, 'small', true)] : sided ? [text(words.sided, 'small', true)] : []),
  ];
}

import { sentenceCase } from '../wording/catalogue';
import type { ListColumn } from './list';
import { unmistakable } from './numbers';

/** A cell as it goes out, from the one way the program writes it: read back, it comes to the same. */
export function shownCell({ entry, words = {} }: ListColumn, text: string): string {
  if (text === '') return '';
  switch (entry) {
    case 'decimal':
      return unmistakable(text);
    case 'decimals':
      return text.split(', ').map(unmistakable).join('; ');
    case 'choice':
      return words[text] ?? text;
    case 'choices':
      return text
        .split(',')
        .map((part) => words[part] ?? part)
        .join('; ');
    default:
      return text;
  }
}

/** Likewise for a sentence: choices begin with a capital where they stand alone. */
export const saidCell = (column: ListColumn, text: string): string =>
  text === ''
    ? 'not stated'
    : column.entry === 'choice'
      ? sentenceCase(shownCell(column, text))
      : shownCell(column, text);

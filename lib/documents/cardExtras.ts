import type { ExtraFound } from '../kits/extras';
import type { CardBody } from '../plans/card';
import { cardPaperWords as words } from '../wording/card-paper';
import { listWords } from '../wording/numbers';
import { kitSheetWords } from '../wording/paper';
import { shortDateWords } from './edition';
import type { KitSheetNames } from './kitSheet';
import { type Block, type Cell, type Column, text, textCell } from './sheet';

/** The preference card a case was booked by, as its sheets show it: what it asks for, and where that can be had. */
export interface CardAsked {
  surgeon: string;
  procedure: string;
  version: number;
  /** The version the card has by now; the case keeps its own. */
  newest: number;
  note: CardBody['note'];
  extras: readonly ExtraFound[];
}

/** What the card adds to a pick list: said to be the card's, with where each thing is, and never a reason to hold the case up. */
export function cardBlocks(card: CardAsked, names: Pick<KitSheetNames, 'name' | 'code'>): Block[] {
  const { columns } = words;
  if (card.extras.length === 0 && card.note === null) return [];
  const narrow = (head: string, widthMm: number): Column => ({ head, widthMm, align: 'centre' });
  return [
    {
      kind: 'heading',
      level: 2,
      text: words.asked,
      note: words.askedBy(card.surgeon, card.procedure, card.version),
    },
    ...(card.newest > card.version
      ? [{ kind: 'paragraph', text: words.newer(card.version, card.newest), size: 'body' } as const]
      : []),
    ...(card.note === null ? [] : [{ kind: 'paragraph', text: card.note, size: 'large' } as const]),
    ...(card.extras.length === 0
      ? []
      : [
          {
            kind: 'table' as const,
            caption: words.caption,
            columns: [
              narrow(columns.tick, 11),
              narrow(columns.quantity, 17),
              { head: columns.item, widthMm: null, align: 'left' as const },
              { head: columns.where, widthMm: 62, align: 'left' as const },
              narrow(columns.initials, 17),
            ],
            rowHeader: 2,
            rowMm: 12,
            rows: card.extras.map((extra): Cell[] => [
              { kind: 'tick' },
              textCell(text(`${extra.quantity} ×`, 'key', true)),
              textCell(
                text(names.name(extra.itemId), 'body', true),
                text(names.code(extra.itemId), 'small'),
                ...(extra.note === null ? [] : [text(extra.note, 'body')]),
              ),
              textCell(
                ...whereLines(extra).map((line, at) => text(line, at === 0 ? 'body' : 'small', at === 0)),
              ),
              { kind: 'blank' },
            ]),
          },
        ]),
  ];
}

/** Where one thing can be had, a line each; the last says what is lacking. */
export function whereLines({ opened, packs, closed, lacking }: ExtraFound): string[] {
  return [
    ...opened.map(({ code, pieces }) => words.inOpened(code, pieces)),
    ...packs.map(({ form, pieces, lot, useBy, place }) =>
      words.inPack(
        kitSheetWords.form[form],
        pieces,
        place?.name ?? kitSheetWords.placeNotStated,
        kitSheetWords.lot(lot),
        kitSheetWords.useBy(useBy === null ? null : shortDateWords(useBy)),
      ),
    ),
    ...(lacking > 0 && closed.length > 0 ? [words.inClosed(listWords(closed))] : []),
    ...(lacking > 0 ? [words.lacking(lacking)] : []),
  ];
}

import type { ListColumn } from '../lists/csv';
import { penceOf } from '../restock/value';
import { SHEET_WORDS } from '../wording/paper';
import { supplyOrderWords as words } from '../wording/restock-paper';
import { poundsWords } from '../wording/restock-screens';
import { dateWords, editionOf, momentWords, type Printing, recordCode, sheetCautions } from './edition';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** An order as its papers and files tell it. */
export interface OrderToTell {
  number: string;
  revision: number;
  maker: string;
  restock: string;
  proposedBy: string;
  orderedBy: string;
  orderedAt: string;
  expectedOn: string | null;
  state: 'open' | 'closed';
  closedBecause: string | null;
  lines: readonly {
    code: string;
    gtin: string | null;
    name: string;
    ordered: number;
    packOf: number;
    unitPence: number | null;
    here: number;
  }[];
}

type Line = OrderToTell['lines'][number];

/** The order as a maker reads it: what, how many, in which packs. It names no case and no patient. */
export function supplyOrderSheet(order: OrderToTell, printing: Printing): Sheet {
  const edition = editionOf(String(order.revision), printing);
  const { facts: terms } = words;
  return {
    kind: 'supplyOrder',
    kindWords: SHEET_WORDS.supplyOrder,
    title: order.number,
    subtitle: order.maker,
    facts: [
      { term: terms.to, value: order.maker },
      { term: terms.ordered, value: momentWords(order.orderedAt) },
      { term: terms.orderedBy, value: order.orderedBy },
      { term: terms.of, value: words.ofProposal(order.restock, order.proposedBy) },
      {
        term: terms.expected,
        value: order.expectedOn === null ? words.notKnown : dateWords(order.expectedOn),
      },
      { term: terms.value, value: poundsWords(penceOf(order.lines)) },
      ...(order.state === 'closed' ? [{ term: terms.state, value: words.closed(order.closedBecause) }] : []),
    ],
    blocks: [
      { kind: 'heading', level: 2, text: words.please, note: words.lines(order.lines.length) },
      linesTable(order.lines),
      { kind: 'heading', level: 2, text: words.conditions, note: null },
      ...[words.perPart, words.useBy, words.notAll].map(
        (line): Block => ({ kind: 'paragraph', text: line, size: 'body' }),
      ),
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.hospital, note: null },
          { title: words.signed.maker, note: null },
        ],
      },
    ],
    record: recordCode('supplyOrder', order.number, `R${order.revision}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function linesTable(lines: readonly Line[]): Block {
  const { columns } = words;
  const column = (head: string, widthMm: number | null, align: Column['align'] = 'left'): Column => ({
    head,
    widthMm,
    align,
  });
  return {
    kind: 'table',
    caption: words.caption,
    columns: [
      column(columns.code, 30),
      column(columns.gtin, 34),
      column(columns.name, null),
      column(columns.pieces, 16, 'centre'),
      column(columns.packs, 22, 'centre'),
      column(columns.unit, 18, 'centre'),
    ],
    rowHeader: 2,
    rowMm: 7,
    rows: lines.map(({ code, gtin, name, ordered, packOf, unitPence }): Cell[] => [
      textCell(text(code, 'body', true)),
      textCell(text(gtin ?? '–')),
      textCell(text(name)),
      textCell(text(String(ordered), 'body', true)),
      textCell(text(packOf === 1 ? '–' : `${ordered / packOf} × ${packOf}`)),
      textCell(text(unitPence === null ? '–' : (unitPence / 100).toFixed(2))),
    ]),
  };
}

/** The lines of an order as a list to send: codes and GTINs are texts. */
export const orderColumns = (order: OrderToTell): ListColumn<Line>[] => [
  { head: 'Order', value: () => order.number },
  { head: 'Code', value: ({ code }) => code },
  { head: 'GTIN', value: ({ gtin }) => gtin },
  { head: 'Item', value: ({ name }) => name },
  { head: 'Pieces', value: ({ ordered }) => ordered },
  { head: 'Pack of', value: ({ packOf }) => packOf },
  { head: 'Packs', value: ({ ordered, packOf }) => ordered / packOf },
  { head: 'Unit price, GBP', value: ({ unitPence }) => (unitPence === null ? null : unitPence / 100) },
];

/** The order for another program: units in the names, what is not stated as `null`. */
export function orderJson(order: OrderToTell) {
  const { number, maker, orderedAt, orderedBy, expectedOn, state, closedBecause, restock, lines } = order;
  return {
    order: number,
    maker,
    orderedAt,
    orderedBy,
    expectedOn,
    state,
    closedBecause,
    proposal: restock,
    valuePence: penceOf(lines),
    lines: lines.map(({ code, gtin, name, ordered, packOf, unitPence, here }) => ({
      code,
      gtin,
      name,
      pieces: ordered,
      packOf,
      packs: ordered / packOf,
      unitPence,
      receivedPieces: here,
    })),
  };
}

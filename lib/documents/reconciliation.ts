import type { Explanation } from '../consignment/reconcile';
import { SHEET_WORDS } from '../wording/paper';
import {
  explanationWords,
  HOW_WORDS,
  signed,
  slotsWords,
  reconciliationPaper as words,
} from '../wording/reconciliation';
import { dateWords, editionOf, momentWords, type Printing, recordCode, sheetCautions } from './edition';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** A reconciliation as its paper tells it. */
export interface ReconciliationToTell {
  number: string;
  revision: number;
  owner: string;
  how: 'list' | 'count';
  listedOn: string;
  enteredBy: string;
  enteredAt: string;
  closedBy: string | null;
  closedWith: string | null;
  closedAt: string | null;
  lines: readonly {
    code: string;
    name: string;
    lot: string | null;
    listed: number | null;
    onShelf: number;
    withCases: number;
    inSlots: number;
    difference: number;
    explained: readonly Explanation[];
    unexplained: number;
    because: string | null;
    becauseBy: string | null;
  }[];
}

type Line = ReconciliationToTell['lines'][number];

/** What the owner says beside what our record said that day, what explains the differences, and what nothing does. */
export function reconciliationSheet(of: ReconciliationToTell, printing: Printing): Sheet {
  const edition = editionOf(String(of.revision), printing);
  const { facts: terms } = words;
  const left = of.lines.filter(({ unexplained }) => unexplained !== 0);
  const told = of.lines.filter(({ unexplained, difference }) => unexplained === 0 && difference !== 0);
  const same = of.lines.filter(({ unexplained, difference }) => unexplained === 0 && difference === 0);
  return {
    kind: 'reconciliation',
    kindWords: SHEET_WORDS.reconciliation,
    title: of.number,
    subtitle: of.owner,
    facts: [
      { term: terms.owner, value: of.owner },
      { term: terms.by, value: HOW_WORDS[of.how] },
      { term: terms.of, value: dateWords(of.listedOn) },
      { term: terms.entered, value: `${momentWords(of.enteredAt)}, ${of.enteredBy}` },
      {
        term: terms.closed,
        value:
          of.closedAt === null
            ? words.open
            : words.closedBy(momentWords(of.closedAt), of.closedBy ?? '', of.closedWith),
      },
      { term: terms.lots, value: String(of.lines.length) },
      { term: terms.unexplained, value: String(left.length) },
    ],
    blocks: [
      { kind: 'paragraph', text: of.how === 'list' ? words.listOnly : words.countOnly, size: 'body' },
      ...part(words.unexplainedHead, left),
      ...part(words.explainedHead, told),
      ...part(words.sameHead, same),
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.hospital, note: null },
          { title: words.signed.owner, note: null },
        ],
      },
    ],
    record: recordCode('reconciliation', of.number, `R${of.revision}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

/** What explains a difference, and what a person wrote of the rest. */
export function whyWords(line: Line): string {
  const reason =
    line.unexplained === 0
      ? ''
      : line.because === null
        ? `${signed(line.unexplained)}: ${words.noReason}.`
        : `${signed(line.unexplained)}: ${line.because} (${line.becauseBy ?? ''})`;
  const slots = line.unexplained === 0 ? '' : slotsWords(line.inSlots);
  return [explanationWords(line.explained), reason, slots].filter((one) => one !== '').join('. ');
}

const column = (head: string, widthMm: number | null, align: Column['align'] = 'left'): Column => ({
  head,
  widthMm,
  align,
});

function part(head: string, lines: readonly Line[]): Block[] {
  if (lines.length === 0) return [];
  const { columns } = words;
  const figure = (value: number) => textCell(text(String(value)));
  const whys = lines.some((line) => whyWords(line) !== '');
  return [
    { kind: 'heading', level: 2, text: head, note: String(lines.length) },
    {
      kind: 'table',
      caption: head,
      columns: [
        column(columns.code, 26),
        column(columns.name, whys ? 32 : null),
        column(columns.lot, 33),
        column(columns.owner, 13, 'centre'),
        column(columns.shelf, 11, 'centre'),
        column(columns.cases, 12, 'centre'),
        column(columns.slots, 11, 'centre'),
        column(columns.difference, 13, 'centre'),
        ...(whys ? [column(columns.why, null)] : []),
      ],
      rowHeader: 1,
      rowMm: 7,
      rows: lines.map((line): Cell[] => [
        textCell(text(line.code, 'body', true)),
        textCell(text(line.name)),
        textCell(text(line.lot ?? words.noLot)),
        textCell(text(line.listed === null ? words.notListed : String(line.listed), 'body', true)),
        figure(line.onShelf),
        figure(line.withCases),
        figure(line.inSlots),
        textCell(text(signed(line.difference), 'body', true)),
        ...(whys ? [textCell(text(whyWords(line)))] : []),
      ]),
    },
  ];
}

import type { UsageOutcome } from '../consignment/outcome';
import type { UsageOrderState } from '../consignment/state';
import type { ListColumn } from '../lists/csv';
import { shareWords, USAGE_OUTCOME_WORDS } from '../wording/consignment';
import { usageOrderWords as words } from '../wording/consignment-paper';
import { SHEET_WORDS } from '../wording/paper';
import { editionOf, momentWords, type Printing, recordCode, sheetCautions, shortDateWords } from './edition';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** A line of a usage order as its papers and files tell it. */
export interface UsageLineToTell {
  way: 'used' | 'takenBack';
  code: string;
  gtin: string | null;
  name: string;
  lot: string | null;
  useBy: string | null;
  pieces: number;
  outcome: UsageOutcome;
  /** Opaque: it names no patient. */
  reference: string | null;
  doneOn: string;
  replace: boolean | null;
}

/** A usage order as its papers and files tell it: no patient, no surgeon, no price. */
export interface UsageOrderToTell {
  number: string;
  revision: number;
  state: UsageOrderState;
  owner: string;
  address: string | null;
  madeBy: string;
  madeAt: string;
  approvedBy: string | null;
  approvedAt: string | null;
  sentBy: string | null;
  sentAt: string | null;
  sentHow: string | null;
  withdrawnBecause: string | null;
  lines: readonly UsageLineToTell[];
  uncertain: readonly {
    set: string;
    code: string;
    name: string;
    reference: string | null;
    outcome: UsageOutcome | 'setAside';
    pieces: number;
    lo: number;
    hi: number;
  }[];
}

const sumOf = (lines: readonly UsageLineToTell[]) => lines.reduce((sum, { pieces }) => sum + pieces, 0);

/** The usage order as its owner reads it: what is to be replaced, what is only told, what is taken back, what is uncertain. */
export function usageOrderSheet(order: UsageOrderToTell, printing: Printing): Sheet {
  const edition = editionOf(String(order.revision), printing);
  const used = order.lines.filter(({ way }) => way === 'used');
  const back = order.lines.filter(({ way }) => way === 'takenBack');
  return {
    kind: 'usageOrder',
    kindWords: SHEET_WORDS.usageOrder,
    title: order.number,
    subtitle: order.owner,
    facts: factsOf(order, used, back),
    blocks: [
      ...standingNotice(order),
      ...part(
        words.replaceHead,
        null,
        used.filter(({ replace }) => replace === true),
      ),
      ...part(
        words.reportHead,
        null,
        used.filter(({ replace }) => replace === false),
      ),
      ...part(
        words.openHead,
        null,
        used.filter(({ replace }) => replace === null),
      ),
      ...part(words.takenBackHead, words.takenBackNote, back),
      ...uncertainPart(order),
      { kind: 'paragraph', text: words.references, size: 'body' },
      { kind: 'paragraph', text: words.conditions, size: 'body' },
      {
        kind: 'signatures',
        boxes: [
          { title: words.signed.hospital, note: null },
          { title: words.signed.owner, note: null },
        ],
      },
    ],
    record: recordCode('usageOrder', order.number, `R${order.revision}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function factsOf(
  order: UsageOrderToTell,
  used: readonly UsageLineToTell[],
  back: readonly UsageLineToTell[],
): Sheet['facts'] {
  const { facts: terms } = words;
  const by = (at: string | null, person: string | null, none: string) =>
    at === null ? none : words.by(momentWords(at), person ?? '');
  return [
    { term: terms.to, value: order.owner },
    ...(order.address === null ? [] : [{ term: terms.address, value: order.address }]),
    { term: terms.made, value: by(order.madeAt, order.madeBy, '') },
    { term: terms.approved, value: by(order.approvedAt, order.approvedBy, words.notApproved) },
    {
      term: terms.sent,
      value: `${by(order.sentAt, order.sentBy, words.notSent)}${order.sentHow === null ? '' : `: ${order.sentHow}`}`,
    },
    { term: terms.pieces, value: String(sumOf(used)) },
    { term: terms.replace, value: String(sumOf(used.filter(({ replace }) => replace === true))) },
    { term: terms.takenBack, value: String(sumOf(back)) },
    ...(order.withdrawnBecause === null
      ? []
      : [{ term: terms.stands, value: words.withdrawn(order.withdrawnBecause) }]),
  ];
}

function standingNotice({ state }: UsageOrderToTell): Block[] {
  if (state === 'made')
    return [{ kind: 'notice', word: words.draft.word, shape: 'stop', lines: [words.draft.sentence] }];
  if (state === 'withdrawn')
    return [{ kind: 'notice', word: 'WITHDRAWN', shape: 'stop', lines: [words.withdrawnNotice] }];
  return [];
}

const column = (head: string, widthMm: number | null, align: Column['align'] = 'left'): Column => ({
  head,
  widthMm,
  align,
});

function part(head: string, note: string | null, lines: readonly UsageLineToTell[]): Block[] {
  if (lines.length === 0) return [];
  const { columns } = words;
  const counted = words.lines(lines.length, sumOf(lines));
  return [
    { kind: 'heading', level: 2, text: head, note: note === null ? counted : `${counted}: ${note}` },
    {
      kind: 'table',
      caption: head,
      columns: [
        column(columns.code, 26),
        column(columns.name, null),
        column(columns.lot, 36),
        column(columns.pieces, 14, 'centre'),
        column(columns.outcome, 25),
        column(columns.case, 22),
        column(columns.day, 22),
      ],
      rowHeader: 1,
      rowMm: 7,
      rows: lines.map((line): Cell[] => [
        textCell(text(line.code, 'body', true), text(line.gtin ?? '–', 'small')),
        textCell(text(line.name)),
        textCell(
          text(line.lot ?? words.noLot, 'body', true),
          ...(line.useBy === null ? [] : [text(shortDateWords(line.useBy), 'small')]),
        ),
        textCell(text(line.way === 'used' ? String(line.pieces) : `−${line.pieces}`, 'body', true)),
        textCell(text(USAGE_OUTCOME_WORDS[line.outcome])),
        textCell(text(line.reference ?? words.noCase)),
        textCell(text(shortDateWords(line.doneOn))),
      ]),
    },
  ];
}

function uncertainPart({ uncertain }: UsageOrderToTell): Block[] {
  if (uncertain.length === 0) return [];
  const { columns } = words;
  return [
    { kind: 'heading', level: 2, text: words.uncertainHead, note: null },
    { kind: 'paragraph', text: words.uncertainNote, size: 'body' },
    {
      kind: 'table',
      caption: words.uncertainHead,
      columns: [
        column(columns.code, 28),
        column(columns.name, null),
        column(columns.set, 24),
        column(columns.outcome, 34),
        column(columns.case, 26),
        column(columns.share, 22, 'centre'),
      ],
      rowHeader: 1,
      rowMm: 7,
      rows: uncertain.map((one): Cell[] => [
        textCell(text(one.code, 'body', true)),
        textCell(text(one.name)),
        textCell(text(one.set)),
        textCell(text(USAGE_OUTCOME_WORDS[one.outcome])),
        textCell(text(one.reference ?? words.noCase)),
        textCell(text(shareWords(one.lo, one.hi, one.pieces), 'body', true)),
      ]),
    },
  ];
}

const ASKED_WORDS = { replace: 'replace', report: 'do not replace', open: 'not said yet' };
const askedOf = ({ way, replace }: UsageLineToTell) =>
  way === 'takenBack'
    ? null
    : replace === null
      ? ASKED_WORDS.open
      : replace
        ? ASKED_WORDS.replace
        : ASKED_WORDS.report;

/** The lines as a list to send: codes, GTINs, lots and references are texts; what is taken back counts below none. */
export const usageColumns = (order: UsageOrderToTell): ListColumn<UsageLineToTell>[] => [
  { head: 'Usage order', value: () => order.number },
  { head: 'Code', value: ({ code }) => code },
  { head: 'GTIN', value: ({ gtin }) => gtin },
  { head: 'Item', value: ({ name }) => name },
  { head: 'Lot', value: ({ lot }) => lot },
  { head: 'Use-by', value: ({ useBy }) => useBy },
  { head: 'Pieces', value: ({ way, pieces }) => (way === 'used' ? pieces : -pieces) },
  { head: 'Outcome', value: ({ outcome }) => USAGE_OUTCOME_WORDS[outcome] },
  { head: 'Case', value: ({ reference }) => reference },
  { head: 'On', value: ({ doneOn }) => doneOn },
  { head: 'Asked', value: askedOf },
];

/** The usage order for another program; what is not stated as `null`. */
export function usageOrderJson(order: UsageOrderToTell) {
  const { number, owner, state, madeAt, approvedAt, sentAt, sentHow, lines, uncertain } = order;
  return {
    usageOrder: number,
    owner,
    state,
    madeAt,
    approvedAt,
    sentAt,
    sentHow,
    lines: lines.map((line) => ({
      kind: line.way,
      code: line.code,
      gtin: line.gtin,
      name: line.name,
      lot: line.lot,
      useBy: line.useBy,
      pieces: line.pieces,
      outcome: line.outcome,
      caseReference: line.reference,
      on: line.doneOn,
      replace: line.replace,
    })),
    uncertain: uncertain.map(({ set, code, name, reference, outcome, pieces, lo, hi }) => ({
      ...{ set, code, name, caseReference: reference, outcome, pieces },
      atLeast: lo,
      atMost: hi,
    })),
  };
}

import type { ListColumn } from '../lists/csv';
import type { LotBalance } from '../trace/lotTrace';
import type { RecallTask } from '../trace/recall';
import type { Standing } from '../trace/slotBounds';
import { capitalised } from '../wording/numbers';
import {
  BALANCE_WORDS,
  REHEARSAL,
  recallWords,
  TASK_WORDS,
  recallPaperWords as words,
} from '../wording/recall';
import { boundsWord, traceWords } from '../wording/trace';
import { editionOf, momentWords, type Printing, recordCode, sheetCautions, shortDateWords } from './edition';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** What the report of a recall is made from. Cases are opaque references. */
export interface RecallReportOf {
  recall: {
    number: string;
    what: string;
    reason: string;
    noticeReference: string | null;
    isRehearsal: boolean;
    opened: { at: string; by: string };
    closed: { at: string; by: string; with: string; because: string } | null;
    balance: LotBalance | null;
    /** `pieces` is `null` where the reader counts that set blind. */
    holds: readonly { setId: string | null; name: string; pieces: number | null; heldStill: boolean }[];
    tasks: readonly { name: string; task: RecallTask; acknowledgedAt: string | null; note: string | null }[];
  };
  /** In the order in which they are looked at. */
  cases: readonly {
    reference: string;
    date: string;
    surgeon: string | null;
    /** `null`: not shown to whoever counts a set that went to it. */
    lo: number | null;
    hi: number | null;
    standing: Standing;
    reasons: readonly string[];
  }[];
  contradictions: readonly { set: string; sentence: string }[];
  printing: Printing;
}

/** Paper names no more cases than this, those that are looked at first; the file of the recall has every one. */
export const MOST_CASES_ON_PAPER = 200;

type CaseOnPaper = RecallReportOf['cases'][number];

/** What the file of a recall's cases is called, on paper and where it is saved. */
export const recallCasesFile = (number: string): string => `recall-${number}-cases.csv`;

/** Every case of a recall, as a file has it. */
export function recallCaseColumns({
  number,
  isRehearsal,
}: Pick<RecallReportOf['recall'], 'number' | 'isRehearsal'>): ListColumn<CaseOnPaper>[] {
  const { columns, fileColumns } = words;
  return [
    { head: fileColumns.recall, value: () => (isRehearsal ? `${number} ${REHEARSAL}` : number) },
    { head: columns.case, value: ({ reference }) => reference },
    { head: columns.date, value: ({ date }) => date },
    { head: columns.surgeon, value: ({ surgeon }) => surgeon },
    { head: columns.stands, value: ({ standing }) => standing },
    { head: fileColumns.least, value: ({ lo }) => lo },
    { head: fileColumns.most, value: ({ hi }) => hi },
    { head: columns.why, value: ({ reasons }) => [...new Set(reasons)].join(' ') },
  ];
}

/** A recall on paper: its cases with their reasons, the balance, what is held, and who was asked and said so. */
export function recallReport({ recall, cases, contradictions, printing }: RecallReportOf): Sheet {
  const edition = editionOf('1', printing);
  const { facts: terms } = words;
  const count = (standing: Standing) => String(cases.filter((one) => one.standing === standing).length);
  const heldSets = recall.holds.filter(({ setId }) => setId !== null).length;
  const { closed } = recall;
  return {
    kind: 'recall',
    kindWords: words.kind(recall.isRehearsal),
    title: recall.number,
    subtitle: capitalised(recall.what),
    facts: [
      { term: terms.opened, value: momentWords(recall.opened.at) },
      { term: terms.by, value: recall.opened.by },
      { term: terms.reference, value: recall.noticeReference ?? words.none },
      {
        term: terms.state,
        value: closed === null ? words.open : words.closed(momentWords(closed.at), closed.by, closed.with),
      },
      { term: terms.confirmed, value: count('confirmed') },
      { term: terms.possible, value: count('possible') },
      { term: terms.excluded, value: count('excluded') },
      { term: terms.held, value: recallWords.held(heldSets, recall.holds.length - heldSets) },
    ],
    blocks: blocksOf(recall, cases, contradictions),
    record: recordCode('recall', recall.number, 'V1', printing.at),
    edition,
    cautions: [...(recall.isRehearsal ? [words.rehearsalCaution] : []), ...sheetCautions(edition)],
  };
}

function blocksOf(
  recall: RecallReportOf['recall'],
  cases: RecallReportOf['cases'],
  contradictions: RecallReportOf['contradictions'],
): Block[] {
  const heading = (title: string, note: string | null = null): Block => ({
    kind: 'heading',
    level: 2,
    text: title,
    note,
  });
  const paragraph = (sentence: string): Block => ({ kind: 'paragraph', text: sentence, size: 'body' });
  const blocks: Block[] = [];
  if (recall.isRehearsal)
    blocks.push({ kind: 'notice', word: REHEARSAL, shape: 'note', lines: [recallWords.rehearsalNote] });
  blocks.push(paragraph(`${words.why}: ${recall.reason}`));
  if (recall.closed !== null) blocks.push(paragraph(`${words.closedBecause}: ${recall.closed.because}`));
  for (const { set, sentence } of contradictions)
    blocks.push({
      kind: 'notice',
      word: words.contradiction,
      shape: 'unknown',
      lines: [`${set}: ${sentence}`],
    });
  blocks.push(heading(words.cases, words.casesNote));
  if (cases.length > MOST_CASES_ON_PAPER)
    blocks.push({
      kind: 'notice',
      word: words.notAll,
      shape: 'note',
      lines: [words.firstOf(MOST_CASES_ON_PAPER, cases.length, recallCasesFile(recall.number))],
    });
  blocks.push(casesTable(cases.slice(0, MOST_CASES_ON_PAPER)));
  if (recall.balance !== null)
    blocks.push(heading(words.balance, words.balanceNote), balanceTable(recall.balance));
  blocks.push(heading(words.holds), holdsTable(recall.holds));
  blocks.push(heading(words.tasks), tasksTable(recall.tasks));
  blocks.push({
    kind: 'signatures',
    boxes: [
      { title: words.signed.one, note: null },
      { title: words.signed.two, note: null },
    ],
  });
  return blocks;
}

const left = (head: string, widthMm: number | null): Column => ({ head, widthMm, align: 'left' });

function casesTable(cases: RecallReportOf['cases']): Block {
  if (cases.length === 0) return { kind: 'paragraph', text: words.noCases, size: 'body' };
  const { columns } = words;
  return {
    kind: 'table',
    caption: words.cases,
    columns: [
      left(columns.case, 26),
      left(columns.date, 24),
      left(columns.surgeon, 32),
      left(columns.stands, 34),
      left(columns.why, null),
    ],
    rowHeader: 0,
    rowMm: 7,
    rows: cases.map((one): Cell[] => [
      textCell(text(one.reference, 'body', true)),
      textCell(text(shortDateWords(one.date), 'small')),
      textCell(text(one.surgeon ?? '–', 'small')),
      textCell(text(traceWords.standingSeen(one), 'small', one.standing !== 'excluded')),
      textCell(...[...new Set(one.reasons)].map((reason) => text(reason, 'small'))),
    ]),
  };
}

function balanceTable(balance: LotBalance): Block {
  const terms = [
    'received',
    'implanted',
    'wasted',
    'held',
    'returned',
    'unaccounted',
    'notFound',
    'setAside',
    'lotLost',
  ] as const;
  return {
    kind: 'table',
    caption: words.balance,
    columns: [left(words.balanceColumns.term, null), left(words.balanceColumns.pieces, 30)],
    rowHeader: 0,
    rowMm: 7,
    rows: terms.map((term): Cell[] => [
      textCell(text(BALANCE_WORDS[term], 'body', term === 'received')),
      textCell(text(term === 'received' ? String(balance.received) : boundsWord(balance[term]))),
    ]),
  };
}

function holdsTable(holds: RecallReportOf['recall']['holds']): Block {
  if (holds.length === 0) return { kind: 'paragraph', text: words.noHolds, size: 'body' };
  const { holdColumns: columns } = words;
  return {
    kind: 'table',
    caption: words.holds,
    columns: [left(columns.what, null), left(columns.pieces, 24), left(columns.now, 40)],
    rowHeader: 0,
    rowMm: 7,
    rows: holds.map(({ name, pieces, heldStill }): Cell[] => [
      textCell(text(name)),
      textCell(text(pieces === null ? words.notShown : String(pieces))),
      textCell(text(heldStill ? words.heldStill : words.notHeld, 'small', heldStill)),
    ]),
  };
}

function tasksTable(tasks: RecallReportOf['recall']['tasks']): Block {
  const { taskColumns: columns } = words;
  return {
    kind: 'table',
    caption: words.tasks,
    columns: [
      left(columns.person, 40),
      left(columns.task, null),
      left(columns.when, 44),
      left(columns.note, 44),
    ],
    rowHeader: 0,
    rowMm: 7,
    rows: tasks.map(({ name, task, acknowledgedAt, note }): Cell[] => [
      textCell(text(name)),
      textCell(text(TASK_WORDS[task], 'small')),
      textCell(text(acknowledgedAt === null ? words.notYet : momentWords(acknowledgedAt), 'small')),
      textCell(text(note ?? '–', 'small')),
    ]),
  };
}

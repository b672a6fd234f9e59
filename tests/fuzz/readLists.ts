import type { ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { mapColumns } from '@/lib/exchange/mapping';
import { readExchangeFile } from '@/lib/exchange/readFile';
import { type RowChoices, readRows } from '@/lib/exchange/readRows';
import { plainDate } from '@/lib/quantities/plainDate';
import { readListFile } from '@/lib/theatre/import/readList';
import { tryList } from '@/lib/theatre/import/tryList';
import { wallTimes } from '@/lib/theatre/import/wallTime';
import { fileWords, problemWords } from '@/lib/wording/exchange';
import { fileFaultWords, importProblemOf } from '@/lib/wording/list-import';
import { type Outcome, requireSentence } from './target';

const CHOICES: RowChoices = { dateOrder: null, decimal: null, repaired: [], kept: [], empty: 'keep' };
const ENCODINGS = [null, 'utf-8', 'windows-1252'] as const;

const HOSPITAL = {
  wall: wallTimes('Europe/London'),
  today: plainDate.parse('2026-01-14'),
  theatres: [
    { id: 'theatre_1', name: 'Theatre 1' },
    { id: 'theatre_3', name: 'Theatre 3, trauma' },
  ],
  surgeons: [{ id: 'person_a', name: 'Ada Quill' }],
  others: ['Bo Tarn'],
};
const LIST = {
  now: '2026-01-14T07:00:00.000Z',
  cases: [],
  caseOfRowId: new Map<string, string>(),
  theatres: HOSPITAL.theatres,
};

/** Reads a file as each of the hospital's own lists is read, to its last cell, and asks a sentence of every refusal. */
export async function readAsList(bytes: Uint8Array, kind: ListKind, way: number): Promise<Outcome> {
  const info = LISTS[kind];
  const encoding = ENCODINGS[way % ENCODINGS.length] ?? null;
  const read = await readExchangeFile(bytes, info, { sheet: null, encoding });
  if (!read.ok) {
    requireSentence(fileWords(read.fault), read.fault);
    return 'refused';
  }
  const mapping = mapColumns(read.file.rows, info, { asked: {}, remembered: null });
  if (!mapping) return 'refused';
  const rows = readRows(read.file.rows, mapping, info, CHOICES, {});
  for (const problem of rows.problems) requireSentence(problemWords(problem, info), problem);
  return rows.problems.length > 0 ? 'refused' : 'taken';
}

/** Reads a file as a theatre list is read, up to what importing it would do. */
export async function readAsTheatreList(bytes: Uint8Array): Promise<Outcome> {
  const read = await readListFile(bytes, { sheet: null, columns: {} });
  if (!read.ok) {
    requireSentence(fileFaultWords(read.fault), read.fault);
    return 'refused';
  }
  const tried = tryList(read.list, HOSPITAL, LIST, {
    dateOrder: null,
    repeatedHour: null,
    urgencyWhereNone: null,
  });
  for (const problem of tried.problems) requireSentence(importProblemOf(problem).message, problem);
  return tried.problems.length > 0 ? 'refused' : 'taken';
}

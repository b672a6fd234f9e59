import { type DateOrder, dateOrderOf } from '../lists/dates';
import { type Damage, type DamageContext, type Suspicion, suspect, usualLengthOf } from './damage';
import { LEAVE_OUT, type ListColumn, type ListInfo } from './list';
import type { Mapping } from './mapping';
import { type DecimalSign, decimalSignOf } from './numbers';
import type { FileCell, FileRow } from './readFile';
import { type CellFault, type HowRead, settleCell } from './settleCell';

/** What a person chose where a file leaves it open; `null` and empty where nothing is chosen. */
export interface RowChoices {
  dateOrder: DateOrder | null;
  decimal: DecimalSign | null;
  /** Suspicions answered, as `column:damage`: repaired as offered, or kept as it stands. */
  repaired: readonly string[];
  kept: readonly string[];
  /** What an empty cell means for something that is here already. */
  empty: 'keep' | 'clear';
}

/** A row as it was read: each column that is there by its key, in the program's own way; empty where it states nothing. */
export interface SettledRow {
  row: number;
  cells: Readonly<Record<string, string>>;
}

/** What is wrong, where. `sentence`: said by the rules of what the row is about; else the words of `fault`. */
export interface CellProblem {
  row: number | null;
  /** Key of our column; `null`: the row as a whole. */
  column: string | null;
  value: string | null;
  code: string;
  fault:
    | CellFault
    | ({ code: 'damaged' } & Pick<Suspicion, 'damage' | 'date'>)
    | { code: 'column-missing' }
    | { code: 'column-twice'; columns: number[] }
    | null;
  sentence: string | null;
}

/** A suspicion that a person answers for all cells like it. */
export interface Question {
  /** `column:damage`. */
  key: string;
  column: string;
  damage: Damage;
  cells: { row: number; value: string; repaired: string | null; suspicion: Suspicion }[];
}

export interface CellNote {
  row: number | null;
  column: string;
  code: 'letterO' | 'wereNumbers';
  value: string | null;
  count: number;
}

export interface RowsRead {
  rows: SettledRow[];
  problems: CellProblem[];
  questions: Question[];
  notes: CellNote[];
  /** Rows left out by their own word. */
  leftOut: number[];
  /** How dates and numbers were read; `open`: some of them need a person's word. */
  how: HowRead;
  open: { dateOrder: boolean; decimal: boolean };
}

/** What a row needs at least, whatever else is required of something new. */
const neededOf = (info: ListInfo, { key, required }: ListColumn) =>
  info.partialBy === null ? required : key === info.partialBy;

/**
 * Reads every row under the headings: each cell by what its column is, all that is wrong or looks damaged at once. Nothing
 * is repaired that a person has not said to repair.
 *
 * @param known codes on record, by the key of the column they stand in
 */
export function readRows(
  rows: readonly FileRow[],
  mapping: Mapping,
  info: ListInfo,
  choices: RowChoices,
  known: Readonly<Record<string, ReadonlySet<string>>>,
): RowsRead {
  const under = rows.filter(({ row }) => row > mapping.headingRow);
  const at = (key: string) => mapping.chosen[key]?.number ?? null;
  const cellAt = ({ cells }: FileRow, key: string) => cells[(at(key) ?? 0) - 1] ?? null;
  const isLeftOut = (row: FileRow) => cellAt(row, LEAVE_OUT.key) !== null;
  const leftOut = under.filter(isLeftOut).map(({ row }) => row);
  const read = under.filter((row) => !isLeftOut(row));
  const columns = info.columns.filter(({ key }) => at(key) !== null);
  const problems = columnProblems(mapping, info);
  const how = howRead(read, columns, cellAt, choices);
  const found: Found = { problems, questions: new Map(), notes: [] };
  const settled: Record<number, Record<string, string>> = {};
  for (const column of columns) {
    const cells = read.map((row) => ({ row: row.row, cell: cellAt(row, column.key) }));
    const texts = cells.flatMap(({ cell }) => (cell?.form === 'date' || cell === null ? [] : [cell.text]));
    const context = { known: known[column.key] ?? new Set<string>(), usualLength: usualLengthOf(texts) };
    for (const { row, cell } of cells) {
      settled[row] ??= {};
      settled[row][column.key] = oneCell(
        { row, cell, column, needed: neededOf(info, column) },
        { context, choices, how },
        found,
      );
    }
    noteNumbers(
      column,
      cells.flatMap(({ cell }) => cell ?? []),
      found,
    );
  }
  const open = new Set(found.problems.map(({ code }) => code));
  return {
    rows: read.map(({ row }) => ({ row, cells: settled[row] ?? {} })),
    problems: found.problems,
    questions: [...found.questions.values()],
    notes: found.notes,
    leftOut,
    how,
    open: {
      dateOrder: choices.dateOrder !== null || open.has('date-either-order') || open.has('date-other-order'),
      decimal: choices.decimal !== null || open.has('either-number'),
    },
  };
}

interface Found {
  problems: CellProblem[];
  questions: Map<string, Question>;
  notes: CellNote[];
}

function columnProblems({ chosen, named }: Mapping, info: ListInfo): CellProblem[] {
  const whole = { row: null, value: null, sentence: null };
  const twice = named.map(({ key, columns }) => ({
    ...whole,
    column: key,
    code: 'column-twice',
    fault: { code: 'column-twice' as const, columns },
  }));
  const missing = info.columns.flatMap((column) =>
    neededOf(info, column) && chosen[column.key]?.number === null
      ? [{ ...whole, column: column.key, code: 'column-missing', fault: { code: 'column-missing' as const } }]
      : [],
  );
  return [...twice, ...missing];
}

function howRead(
  rows: readonly FileRow[],
  columns: readonly ListColumn[],
  cellAt: (row: FileRow, key: string) => FileCell | null,
  choices: RowChoices,
): HowRead {
  const texts = (...entries: ListColumn['entry'][]) =>
    columns
      .filter(({ entry }) => entries.includes(entry))
      .flatMap(({ key }) =>
        rows.flatMap((row) => {
          const cell = cellAt(row, key);
          return cell?.form === 'text' ? [cell.text.replace(/^£\s*/, '')] : [];
        }),
      );
  const numbers = texts('whole', 'decimal', 'decimals', 'pounds').flatMap((text) => text.split(/[;|]/));
  return {
    dateOrder: choices.dateOrder ?? dateOrderOf(texts('date')),
    decimal: choices.decimal ?? decimalSignOf(numbers),
  };
}

/** One repair may show another: `12345.0` may lack its zeros too. */
const MOST_REPAIRS = 4;

function oneCell(
  { row, cell, column, needed }: { row: number; cell: FileCell | null; column: ListColumn; needed: boolean },
  { context, choices, how }: { context: DamageContext; choices: RowChoices; how: HowRead },
  { problems, questions, notes }: Found,
): string {
  const place = { row, column: column.key, sentence: null };
  let now = cell;
  for (let step = 0; now !== null && step < MOST_REPAIRS; step += 1) {
    const suspicion = suspect(now, column, context);
    if (suspicion === null) break;
    const { damage, weight, repaired, date } = suspicion;
    const value = now.form === 'date' ? (date ?? now.text) : now.text;
    if (weight === 'note') {
      notes.push({ row, column: column.key, code: 'letterO', value, count: 1 });
      break;
    }
    if (weight === 'stops') {
      problems.push({ ...place, value, code: 'damaged', fault: { code: 'damaged', damage, date } });
      return '';
    }
    const key = `${column.key}:${damage}`;
    if (choices.kept.includes(key) && now.form !== 'date') break;
    if (choices.repaired.includes(key) && repaired !== null) {
      now = { text: repaired, form: 'text' };
      continue;
    }
    const question = questions.get(key) ?? { key, column: column.key, damage, cells: [] };
    question.cells.push({ row, value, repaired, suspicion });
    questions.set(key, question);
    // looked at as it would be repaired; while it is not answered nothing is brought in
    return repaired ?? (now.form === 'date' ? '' : now.text);
  }
  if (now === null || now.text === '') {
    if (needed) {
      const code = column.none ? 'say-none' : 'needed';
      problems.push({ ...place, value: null, code, fault: { code } });
    }
    return '';
  }
  const settled = settleCell(column, now, how);
  if (settled.ok) return settled.text;
  problems.push({ ...place, value: now.text, code: settled.fault.code, fault: settled.fault });
  return '';
}

/** A column of codes that a spreadsheet holds as numbers: zeros before them, if there were any, are gone. */
function noteNumbers({ key, entry }: ListColumn, cells: readonly FileCell[], { notes }: Found) {
  const count = cells.filter(({ form }) => form === 'number').length;
  if (count > 0 && (entry === 'code' || entry === 'lot'))
    notes.push({ row: null, column: key, code: 'wereNumbers', value: null, count });
}

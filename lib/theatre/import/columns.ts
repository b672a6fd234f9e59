import { patientDataWarnings } from '../patientDataWarning';
import { fieldOf, IMPORT_FIELDS, type ImportField, isAboutThePatient } from './fields';
import type { CellValue, StatedCell, StatedRow, TableRow } from './table';

/** A column of the file; a heading that looks like somebody's data is not shown. */
export interface FileColumn {
  /** From 1. */
  number: number;
  heading: string | null;
  /** About the patient by its heading: it is never read, and cannot be chosen. */
  aboutThePatient: boolean;
}

/** Which column says what: by number, `null` for none. */
export type ColumnChoice = Record<ImportField, number | null>;

export interface ColumnsFound {
  headingRow: number;
  columns: FileColumn[];
  chosen: ColumnChoice;
  /** Fields that more than one column names. */
  named: { field: ImportField; columns: number[] }[];
}

/** Titles may stand above the headings. */
const ROWS_SEARCHED = 20;
/** A row with fewer of our headings is not taken for the headings where another has more. */
const MOST_HEADING = 60;

/**
 * The headings, which are the row that names most of our fields (or the first with two cells, when none does), and which
 * column says what: as the headings have it, and where a person chose otherwise, as chosen.
 */
export function findColumns(rows: readonly TableRow[], asked: Partial<ColumnChoice>): ColumnsFound | null {
  const heading = headingRow(rows);
  if (heading === null) return null;
  const columns = heading.cells.map((cell, at) => columnOf(cell, at + 1));
  const byField = new Map<ImportField, number[]>();
  heading.cells.forEach((cell, at) => {
    const field = typeof cell === 'string' ? fieldOf(cell) : null;
    if (field !== null) byField.set(field, [...(byField.get(field) ?? []), at + 1]);
  });
  const readable = new Set(columns.filter((one) => !one.aboutThePatient).map(({ number }) => number));
  const chosen = Object.fromEntries(
    IMPORT_FIELDS.map((field) => {
      const choice = asked[field];
      const number = choice === undefined ? (byField.get(field)?.[0] ?? null) : choice;
      return [field, number !== null && readable.has(number) ? number : null];
    }),
  ) as ColumnChoice;
  const named = [...byField].flatMap(([field, numbers]) =>
    numbers.length > 1 && asked[field] === undefined ? [{ field, columns: numbers }] : [],
  );
  return { headingRow: heading.row, columns, chosen, named };
}

function headingRow(rows: readonly TableRow[]): TableRow | null {
  const count = ({ cells }: TableRow) =>
    cells.filter((cell) => typeof cell === 'string' && fieldOf(cell) !== null).length;
  const above = rows.slice(0, ROWS_SEARCHED);
  const most = Math.max(0, ...above.map(count));
  const filled = ({ cells }: TableRow) => cells.filter((cell) => cell !== null).length;
  return above.find((row) => (most >= 2 ? count(row) === most : filled(row) >= 2)) ?? null;
}

function columnOf(cell: CellValue, number: number): FileColumn {
  const text = cell === null ? '' : String(cell);
  const aboutThePatient = isAboutThePatient(text);
  const showable = text !== '' && text.length <= MOST_HEADING && patientDataWarnings(text).length === 0;
  return { number, heading: showable ? text : null, aboutThePatient };
}

/** The rows under the headings by what they say. Columns that say nothing of ours are left where they are. */
export function statedRows(
  rows: readonly TableRow[],
  { headingRow, columns, chosen }: ColumnsFound,
): StatedRow<ImportField>[] {
  const read = IMPORT_FIELDS.flatMap((field) => {
    const number = chosen[field];
    if (number === null) return [];
    const heading = columns[number - 1]?.heading;
    return [{ field, at: number - 1, column: heading ?? `column ${number}` }];
  });
  return rows.flatMap(({ row, cells }) => {
    if (row <= headingRow) return [];
    const stated: Partial<Record<ImportField, StatedCell>> = {};
    for (const { field, at, column } of read) {
      const value = cells[at] ?? null;
      if (value !== null) stated[field] = { value, column };
    }
    return Object.keys(stated).length > 0 ? [{ row, cells: stated }] : [];
  });
}

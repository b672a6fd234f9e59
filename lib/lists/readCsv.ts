import { FORMULA_STARTERS } from './csv';
import { SEPARATORS, type Separator, splitCsv } from './splitCsv';

/** A row with its cells; `row` is the line of the file on which it ends, from 1. */
export interface TextRow {
  row: number;
  cells: (string | null)[];
}

export type CsvRead =
  | { ok: true; rows: TextRow[]; separator: Separator }
  | { ok: false; why: 'empty' }
  | { ok: false; why: 'brokenQuote'; line: number };

/** Headings stand no deeper. */
const ROWS_SEARCHED = 20;

/**
 * Splits a CSV into rows. Comma, semicolon or tab, whichever makes most known headings out of it, and most columns where
 * it names none of them. A text cell that begins `'=` loses the apostrophe that kept a spreadsheet from working it out.
 *
 * @param isHeading whether a cell is the name of a column that is looked for
 */
export function readCsvRows(text: string, isHeading: (cell: string) => boolean): CsvRead {
  if (text.trim() === '') return { ok: false, why: 'empty' };
  let brokenAt: number | null = null;
  let best: { rows: TextRow[]; separator: Separator; score: number } | null = null;
  for (const separator of SEPARATORS) {
    const split = splitCsv(text, separator);
    if (!split.ok) {
      brokenAt ??= split.line;
      continue;
    }
    const rows = split.rows.map(({ line, cells }) => ({ row: line, cells: cells.map(cellOf) }));
    const score = scoreOf(rows, isHeading);
    if (best === null || score > best.score) best = { rows, separator, score };
  }
  if (best === null) return { ok: false, why: 'brokenQuote', line: brokenAt ?? 1 };
  const { rows, separator } = best;
  return { ok: true, rows, separator };
}

function cellOf(cell: string): string | null {
  const text = cell.trim();
  if (text === '') return null;
  return text.startsWith("'") && FORMULA_STARTERS.test(text.slice(1)) ? text.slice(1) : text;
}

/** Known headings count before columns. */
function scoreOf(rows: readonly TextRow[], isHeading: (cell: string) => boolean): number {
  const scores = rows.slice(0, ROWS_SEARCHED).map(({ cells }) => {
    const named = cells.filter((cell) => cell !== null && isHeading(cell)).length;
    return named * 1000 + cells.length;
  });
  return Math.max(0, ...scores);
}

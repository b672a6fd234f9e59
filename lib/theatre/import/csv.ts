import { SEPARATORS, type Separator, splitCsv } from '../../loads/cycle/split';
import { fieldOf } from './fields';
import type { TableRow } from './table';

export type CsvRead =
  | { ok: true; rows: TableRow[]; separator: Separator }
  | { ok: false; why: 'empty' }
  | { ok: false; why: 'brokenQuote'; line: number };

/** A text that a spreadsheet would take for a formula; one of ours has an apostrophe before it. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * Splits a CSV into rows. Comma, semicolon or tab, whichever makes most of our headings out of it, and most columns where
 * it names none of them. A text cell that begins `'=` loses the apostrophe that kept a spreadsheet from working it out.
 */
export function readCsv(text: string): CsvRead {
  if (text.trim() === '') return { ok: false, why: 'empty' };
  let brokenAt: number | null = null;
  let best: { rows: TableRow[]; separator: Separator; score: number } | null = null;
  for (const separator of SEPARATORS) {
    const split = splitCsv(text, separator);
    if (!split.ok) {
      brokenAt ??= split.line;
      continue;
    }
    const rows = split.rows.map(({ line, cells }) => ({ row: line, cells: cells.map(cellOf) }));
    const score = scoreOf(rows);
    if (best === null || score > best.score) best = { rows, separator, score };
  }
  if (best === null) return { ok: false, why: 'brokenQuote', line: brokenAt ?? 1 };
  const { rows, separator } = best;
  return { ok: true, rows, separator };
}

function cellOf(cell: string): string | null {
  const text = cell.trim();
  if (text === '') return null;
  return text.startsWith("'") && FORMULA.test(text.slice(1)) ? text.slice(1) : text;
}

/** Headings of ours count before columns. */
function scoreOf(rows: readonly TableRow[]): number {
  const scores = rows.slice(0, 20).map(({ cells }) => {
    const named = cells.filter((cell) => typeof cell === 'string' && fieldOf(cell) !== null).length;
    return named * 1000 + cells.length;
  });
  return Math.max(0, ...scores);
}

/** A text for a CSV: formula starters get an apostrophe, and what would break the row is quoted. */
export function csvText(text: string): string {
  const safe = FORMULA.test(text) ? `'${text}` : text;
  return csvPlain(safe);
}

/** A date, a time or a number for a CSV, as it is. */
export const csvPlain = (text: string): string =>
  /[",;\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

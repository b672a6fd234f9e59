/** A column of a list that goes out as text: a spreadsheet must not work out what it holds, or eat its leading zeros. */
export interface ListColumn<Row> {
  head: string;
  /** Text is written so that no program takes it for a formula; a number as it is. `null`: not stated. */
  value: (row: Row) => string | number | null;
}

/** What a spreadsheet takes for the beginning of a formula (OWASP, CSV injection; from memory). */
const FORMULA_STARTERS = /^[=+\-@\t\r]/;

/**
 * Rows as comma-separated values (RFC 4180), with the mark by which spreadsheets know UTF-8. A text that begins as a formula
 * gets an apostrophe before it; numbers are left alone.
 */
export function csvOf<Row>(columns: readonly ListColumn<Row>[], rows: readonly Row[]): string {
  const lines = [
    columns.map(({ head }) => field(head)),
    ...rows.map((row) => columns.map(({ value }) => field(value(row)))),
  ];
  return `\uFEFF${lines.map((line) => `${line.join(',')}\r\n`).join('')}`;
}

function field(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = FORMULA_STARTERS.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

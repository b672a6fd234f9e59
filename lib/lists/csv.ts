/** First in a file, so that office programs read it as UTF-8. */
export const CSV_MARK = '\uFEFF';

/** A cell: text, a number as it is or as it is written, or `null` where nothing is stated. */
export type CsvCell = string | number | { figure: string } | null;

/** A column of a list that goes out as text: a spreadsheet must not work out what it holds, or eat its leading zeros. */
export interface ListColumn<Row> {
  head: string;
  value: (row: Row) => CsvCell;
}

/** One line of CSV (RFC 4180). A text that an office program would take for a formula is quoted as text; numbers are left alone. */
export function csvLine(cells: readonly CsvCell[]): string {
  return `${cells.map(cellText).join(',')}\r\n`;
}

/** Rows as a whole file, with a line of heads. */
export function csvOf<Row>(columns: readonly ListColumn<Row>[], rows: readonly Row[]): string {
  const lines = rows.map((row) => csvLine(columns.map(({ value }) => value(row))));
  return `${CSV_MARK}${csvLine(columns.map(({ head }) => head))}${lines.join('')}`;
}

/**
 * What a spreadsheet takes for the beginning of a formula (OWASP, CSV injection; from memory). A text that has the
 * apostrophe already gets another, so that reading it back gives the text.
 */
export const FORMULA_STARTERS = /^'*[=+\-@\t\r]/;

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  if (typeof cell === 'object') return cell.figure;
  const safe = FORMULA_STARTERS.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

import { FORMULA_STARTERS } from '../../lists/csv';
import { type CsvRead, readCsvRows } from '../../lists/readCsv';
import { fieldOf } from './fields';

/** The rows of a CSV that holds a theatre list. */
export const readCsv = (text: string): CsvRead => readCsvRows(text, (cell) => fieldOf(cell) !== null);

/** A text for a CSV: formula starters get an apostrophe, and what would break the row is quoted. */
export function csvText(text: string): string {
  return csvPlain(FORMULA_STARTERS.test(text) ? `'${text}` : text);
}

/** A date, a time or a number for a CSV, as it is. */
export const csvPlain = (text: string): string =>
  /[",;\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

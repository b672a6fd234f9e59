import { CsvError, parse } from 'csv-parse/sync';

/** A line of the file with its cells; `line` counts as an editor does, from 1. */
export interface CsvRow {
  line: number;
  cells: string[];
}

export const SEPARATORS = ['\t', ';', ','] as const;
export type Separator = (typeof SEPARATORS)[number];

/** Splits text into rows and cells; answers the line of a broken quote instead of throwing. */
export function splitCsv(
  text: string,
  separator: Separator,
): { ok: true; rows: CsvRow[] } | { ok: false; line: number } {
  try {
    const records = parse(text, {
      delimiter: separator,
      bom: true,
      info: true,
      relaxColumnCount: true,
      skipEmptyLines: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return { ok: true, rows: records.map(({ record, info }) => ({ line: info.lines, cells: record })) };
  } catch (error) {
    if (error instanceof CsvError) return { ok: false, line: Number(error.lines ?? 1) };
    throw error;
  }
}

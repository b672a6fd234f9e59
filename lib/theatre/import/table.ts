/** The longest file that is read, its most rows under the heading, and its most columns. */
export const IMPORT_LIMITS = { bytes: 700_000, rows: 500, columns: 100 } as const;

/** A text as written; a number of a spreadsheet, where days are counted from 1900; `null` where nothing is written. */
export type CellValue = string | number | null;

/** A row as the file has it; `row` counts as an editor or a spreadsheet does, from 1. */
export interface TableRow {
  row: number;
  cells: CellValue[];
}

/** What a row says of one thing, and under which heading. */
export interface StatedCell {
  value: CellValue;
  column: string;
  /** More than one is stated, and nothing says which is meant. */
  several?: true;
}

/** A row by what it says, whatever kind of file it came from. What it does not say is not there. */
export interface StatedRow<Field extends string> {
  row: number;
  cells: Partial<Record<Field, StatedCell>>;
}

import type { ReactNode } from 'react';

export type CellValue = string | number | boolean | null | undefined;

/**
 * One column of a `DataTable`.
 *
 * `value` is what is sorted by and, without `cell`, what is shown; `null` and `undefined` are shown as "not stated" and
 * sort last both ways, because unknown is neither small nor large.
 */
export type Column<Row> = {
  id: string;
  header: string;
  value: (row: Row) => CellValue;
  cell?: (row: Row) => ReactNode;
  /** `end` for figures (tabular, right-aligned). */
  align?: 'start' | 'end';
  /** Unit shown under the heading: `mm`, `g`. */
  unit?: string;
  /** `false` where order means nothing. Default true. */
  sortable?: boolean;
  /** Offered in the column choice, hidden at first. */
  hiddenAtFirst?: boolean;
  /** `false` for a column that may not be hidden (the first never may). */
  hideable?: boolean;
  /**
   * `fit` keeps the column as narrow as its content; `wide` gives it a readable minimum. `code`, `name` and `phrase`
   * are like `fit`, and are as wide whatever they hold in an `aligned` table.
   */
  width?: 'fit' | 'wide' | 'code' | 'name' | 'phrase';
};

const collator = new Intl.Collator('en-GB', { numeric: true, sensitivity: 'base' });

/** Compares two cells for ascending order; the caller puts unknown ones last. Codes compare by their numbers (P2 before P10). */
export function compareCells(a: CellValue, b: CellValue): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  return collator.compare(String(a), String(b));
}

/** True for a value that is not stated. */
export function isUnknown(value: CellValue): value is null | undefined {
  return value === null || value === undefined;
}

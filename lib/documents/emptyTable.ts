import type { Cell, Table } from './sheet';

/** Rows of empty cells, to be written in. */
export function emptyTable(
  caption: string,
  columns: { head: string; widthMm: number | null }[],
  rows: number,
): Table {
  return {
    kind: 'table',
    caption,
    columns: columns.map((column) => ({ ...column, align: 'left' })),
    rowHeader: null,
    rowMm: 10,
    rows: Array.from({ length: rows }, () => columns.map((): Cell => ({ kind: 'blank' }))),
  };
}

import writeWorkbook from 'write-excel-file/universal';
import type { ListColumn } from './csv';

const WIDE = 22;

/** Rows as a workbook of one sheet: texts are texts, which nothing works out or shortens, so a GTIN keeps its zeros. */
export async function workbookOf<Row>(
  sheet: string,
  columns: readonly ListColumn<Row>[],
  rows: readonly Row[],
): Promise<Uint8Array> {
  const heading = columns.map(({ head }) => ({ value: head, type: String, fontWeight: 'bold' as const }));
  const lines = rows.map((row) =>
    columns.map(({ value }) => {
      const cell = value(row);
      if (cell === null) return null;
      return typeof cell === 'number' ? { value: cell, type: Number } : { value: cell, type: String };
    }),
  );
  const book = writeWorkbook([heading, ...lines], {
    sheet,
    columns: columns.map(() => ({ width: WIDE })),
    stickyRowsCount: 1,
  });
  return new Uint8Array(await (await book.toBlob()).arrayBuffer());
}

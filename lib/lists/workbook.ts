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
      if (typeof cell === 'number') return { value: cell, type: Number };
      return { value: typeof cell === 'object' ? cell.figure : cell, type: String };
    }),
  );
  const book = writeWorkbook([heading, ...lines], {
    sheet,
    columns: columns.map(() => ({ width: WIDE })),
    stickyRowsCount: 1,
  });
  return new Uint8Array(await (await book.toBlob()).arrayBuffer());
}

/** A sheet whose every cell is text, and stays it when somebody types into it. */
export interface TextSheet {
  name: string;
  heads: readonly string[];
  lines: readonly (readonly string[])[];
  /** Empty lines below, ready to be filled. */
  emptyLines?: number;
}

/** The number format of text (ECMA-376 Part 1, 18.8.30, id 49). */
const AS_TEXT = '@';

/** Sheets of text alone: nothing in them is worked out, shortened or made into a day, also of what is typed later. */
export async function textWorkbook(sheets: readonly TextSheet[]): Promise<Uint8Array> {
  const text = (value: string) => ({ value, type: String, format: AS_TEXT });
  const book = writeWorkbook(
    sheets.map(({ name, heads, lines, emptyLines = 0 }) => ({
      sheet: name,
      columns: heads.map(() => ({ width: WIDE })),
      stickyRowsCount: 1,
      data: [
        heads.map((head) => ({ ...text(head), fontWeight: 'bold' as const })),
        ...lines.map((line) => line.map(text)),
        ...Array.from({ length: emptyLines }, () => heads.map(() => text(''))),
      ],
    })),
  );
  return new Uint8Array(await (await book.toBlob()).arrayBuffer());
}

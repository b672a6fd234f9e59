import writeWorkbook from 'write-excel-file/universal';
import { writePence } from '../quantities/money';

/** What the cells of a column are; `pence` in whole pence, `share` from 0 to 1. */
type CellKind = 'text' | 'number' | 'pence' | 'share';

/** A table of figures: what a chart shows, and what a file of it holds. `null`: not known. */
export interface FigureTable {
  /** Also the name of a file, as `costs-by-month`. */
  name: string;
  caption: string;
  columns: readonly { header: string; kind: CellKind }[];
  rows: readonly (readonly (string | number | null)[])[];
}

/** A cell as people read it. */
export function shownCell(kind: CellKind, value: string | number | null): string {
  if (value === null) return 'not known';
  if (typeof value === 'string') return value;
  switch (kind) {
    case 'pence':
      return writePence(value);
    case 'share':
      return `${(value * 100).toFixed(1)} %`;
    default:
      return String(value);
  }
}

/** Headings of a file say the unit: money in pounds, shares in percent. */
const heading = ({ header, kind }: FigureTable['columns'][number]) =>
  kind === 'pence' ? `${header}, £` : kind === 'share' ? `${header}, %` : header;

/** A figure as a file holds it: pounds with two decimals, percent with one, never a rounding of a rounding. */
const stored = (kind: CellKind, value: number): number =>
  kind === 'pence' ? Math.round(value) / 100 : kind === 'share' ? Math.round(value * 1000) / 10 : value;

/** The table as CSV (RFC 4180) with its head. Text that an office program would take for a formula is quoted as text. */
export function figureCsv({ columns, rows }: FigureTable): string {
  const lines = [
    columns.map(heading),
    ...rows.map((row) =>
      row.map((value, at) => {
        const kind = columns[at]?.kind ?? 'text';
        if (typeof value !== 'number') return value ?? '';
        return kind === 'pence' ? stored(kind, value).toFixed(2) : String(stored(kind, value));
      }),
    ),
  ];
  return `\uFEFF${lines.map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('')}`;
}

function csvCell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) && !/^-?\d+(\.\d+)?$/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const FORMATS: Partial<Record<CellKind, string>> = { pence: '#,##0.00', share: '0.0' };
const WIDE = 32;

/** The table as a workbook: figures as figures, texts as texts, which nothing works out. */
export async function figureWorkbook({ caption, columns, rows }: FigureTable): Promise<Uint8Array> {
  const head = columns.map((column) => ({
    value: heading(column),
    type: String,
    fontWeight: 'bold' as const,
  }));
  const lines = rows.map((row) =>
    row.map((value, at) => {
      const kind = columns[at]?.kind ?? 'text';
      if (value === null) return null;
      if (typeof value === 'string') return { value, type: String };
      const format = FORMATS[kind];
      return { value: stored(kind, value), type: Number, ...(format && { format }) };
    }),
  );
  const book = writeWorkbook([head, ...lines], {
    // at most 31 signs, and none of those a sheet may not be called by
    sheet: caption.replaceAll(/[\\/?*[\]:]/g, ' ').slice(0, 31),
    columns: columns.map(({ kind }) => ({ width: kind === 'text' ? WIDE : WIDE / 2 })),
    stickyRowsCount: 1,
  });
  return new Uint8Array(await (await book.toBlob()).arrayBuffer());
}

import { decodeText, type Encoding } from '../lists/decodeText';
import { readCsvRows } from '../lists/readCsv';
import { type HiddenParts, readWorkbookSheet, type SheetCell } from '../lists/readWorkbook';
import type { Separator } from '../lists/splitCsv';
import { EXCHANGE_LIMITS } from './limits';
import { columnsOf, headingKey, type ListInfo } from './list';
import { numberText } from './numbers';

const WORKBOOK_LIMITS = {
  columns: EXCHANGE_LIMITS.columns,
  lastRow: EXCHANGE_LIMITS.rows + 500,
  unpackedBytes: 60_000_000,
};

/** What an office program made of a cell: a text, or a number or a day, which may not be what was typed. */
export type CellForm = 'text' | 'number' | 'date';

/** A cell as the file has it. A day is a serial of the 1900 system, as its text says. */
export interface FileCell {
  text: string;
  form: CellForm;
}

export interface FileRow {
  row: number;
  cells: (FileCell | null)[];
}

/** Why nothing of a file can be read. Its words are in `lib/wording/exchange.ts`. */
export type FileFault =
  | { code: 'empty' }
  | { code: 'too-large'; bytes: number }
  | { code: 'not-text' }
  | { code: 'old-workbook' }
  | { code: 'broken-quote'; line: number }
  | { code: 'unreadable-workbook' }
  | { code: 'workbook-too-large-inside' }
  | { code: 'sheet-too-large'; cell: string }
  | { code: 'no-such-sheet'; sheets: string[] }
  | { code: 'no-headings' }
  | { code: 'no-rows' }
  | { code: 'too-many-rows'; rows: number }
  | { code: 'too-many-cells'; cells: number };

/** A file by its rows, and how it was understood. */
export interface ReadFile {
  rows: FileRow[];
  understood:
    | { format: 'csv'; separator: Separator; encoding: Encoding; by: 'mark' | 'bytes' | 'person' }
    | { format: 'xlsx'; sheet: string; sheets: string[]; hidden: HiddenParts };
}

export type FileRead = { ok: true; file: ReadFile } | { ok: false; fault: FileFault };

const refuse = (fault: FileFault): FileRead => ({ ok: false, fault });
const begins = (bytes: Uint8Array, ...first: number[]) => first.every((byte, at) => bytes[at] === byte);

/** Reads the rows of an XLSX workbook, or else of a CSV; which of them it is, its first bytes tell and not its name. */
export async function readExchangeFile(
  bytes: Uint8Array,
  info: ListInfo,
  choices: { sheet: string | null; encoding: Encoding | null },
): Promise<FileRead> {
  if (bytes.byteLength === 0) return refuse({ code: 'empty' });
  if (bytes.byteLength > EXCHANGE_LIMITS.bytes) return refuse({ code: 'too-large', bytes: bytes.byteLength });
  if (begins(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return refuse({ code: 'old-workbook' });
  if (begins(bytes, 0x50, 0x4b)) return workbook(bytes, info, choices.sheet);
  const decoded = decodeText(bytes, choices.encoding);
  if (!decoded.ok) return refuse({ code: 'not-text' });
  const read = readCsvRows(decoded.text, headingsOf(info));
  if (!read.ok)
    return refuse(read.why === 'empty' ? { code: 'empty' } : { code: 'broken-quote', line: read.line });
  const { encoding, by } = decoded;
  return bounded({
    rows: read.rows.map(({ row, cells }) => ({
      row,
      cells: cells.map((text) => (text === null ? null : { text, form: 'text' as const })),
    })),
    understood: { format: 'csv', separator: read.separator, encoding, by },
  });
}

/** Whether a text heads one of our columns. */
function headingsOf(info: ListInfo): (text: string) => boolean {
  const known = new Set(
    columnsOf(info).flatMap(({ heading, also = [] }) => [heading, ...also].map(headingKey)),
  );
  return (text) => known.has(headingKey(text));
}

/** Headings stand no deeper, and one alone is a word of a cover sheet. */
const ROWS_SEARCHED = 20;
const LEAST_HEADINGS = 2;

async function workbook(bytes: Uint8Array, info: ListInfo, asked: string | null): Promise<FileRead> {
  const isHeading = headingsOf(info);
  const read = await readWorkbookSheet(bytes, asked, WORKBOOK_LIMITS, (rows) =>
    rows
      .slice(0, ROWS_SEARCHED)
      .some(
        ({ cells }) =>
          cells.filter((cell) => typeof cell === 'string' && isHeading(cell)).length >= LEAST_HEADINGS,
      ),
  );
  if (!read.ok) {
    switch (read.why) {
      case 'sheetTooLarge':
        return refuse({ code: 'sheet-too-large', cell: read.cell });
      case 'noSuchSheet':
        return refuse({ code: 'no-such-sheet', sheets: read.sheets });
      case 'tooLargeInside':
        return refuse({ code: 'workbook-too-large-inside' });
      default:
        return refuse({ code: 'unreadable-workbook' });
    }
  }
  const { sheet, sheets, hidden } = read;
  const rows = read.rows.map(({ row, cells }) => ({ row, cells: cells.map(cellOf) }));
  return bounded({ rows, understood: { format: 'xlsx', sheet, sheets, hidden } });
}

function cellOf(cell: SheetCell): FileCell | null {
  if (cell === null) return null;
  if (typeof cell === 'number') return { text: numberText(cell), form: 'number' };
  if (typeof cell === 'object') return { text: String(cell.serial), form: 'date' };
  return { text: cell, form: 'text' };
}

/** Rows that say something, within what is taken. */
function bounded(file: ReadFile): FileRead {
  const rows = file.rows.filter(({ cells }) => cells.some((cell) => cell !== null));
  if (rows.length === 0) return refuse({ code: 'empty' });
  const cells = rows.reduce((sum, row) => sum + row.cells.length, 0);
  if (cells > EXCHANGE_LIMITS.cells || rows.some((row) => row.cells.length > EXCHANGE_LIMITS.columns))
    return refuse({ code: 'too-many-cells', cells });
  return { ok: true, file: { ...file, rows } };
}

import { readWorkbookSheet, type SheetCell, type WorkbookRead } from '../../lists/readWorkbook';
import { type CellValue, IMPORT_LIMITS, type TableRow } from './table';

export type XlsxRead =
  | { ok: true; rows: TableRow[]; sheets: string[]; sheet: string }
  | Extract<WorkbookRead, { ok: false }>;

const LIMITS = {
  columns: IMPORT_LIMITS.columns,
  /** Room for titles above and notes below the rows that are read. */
  lastRow: IMPORT_LIMITS.rows + 500,
  /** A sheet of 500 rows is a hundredth of it; a file that unpacks to more is not unpacked. */
  unpackedBytes: 20_000_000,
};

/** One sheet of a workbook that holds a theatre list; days and times as serials of the 1900 system. */
export async function readXlsx(bytes: Uint8Array, sheet: string | null): Promise<XlsxRead> {
  const read = await readWorkbookSheet(bytes, sheet, LIMITS);
  if (!read.ok) return read;
  const rows = read.rows.map(({ row, cells }) => ({ row, cells: cells.map(plainCell) }));
  return { ...read, rows };
}

const plainCell = (cell: SheetCell): CellValue =>
  cell !== null && typeof cell === 'object' ? cell.serial : cell;

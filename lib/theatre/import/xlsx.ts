import {
  type HiddenParts,
  readWorkbookSheet,
  type SheetCell,
  type SheetRow,
  type WorkbookRead,
} from '../../lists/readWorkbook';
import { type CellValue, IMPORT_LIMITS, type TableRow } from './table';

export type XlsxRead =
  | { ok: true; rows: TableRow[]; sheets: string[]; sheet: string; hidden: HiddenParts }
  | Extract<WorkbookRead, { ok: false }>;

const LIMITS = {
  columns: IMPORT_LIMITS.columns,
  /** Room for titles above and notes below the rows that are read. */
  lastRow: IMPORT_LIMITS.rows + 500,
  /** A sheet of 500 rows is a hundredth of it; a file that unpacks to more is not unpacked. */
  unpackedBytes: 20_000_000,
};

/** One sheet of a workbook that holds a theatre list; days and times as serials of the 1900 system. */
export async function readXlsx(
  bytes: Uint8Array,
  sheet: string | null,
  isList: (rows: readonly TableRow[]) => boolean,
): Promise<XlsxRead> {
  const read = await readWorkbookSheet(bytes, sheet, LIMITS, (rows) => isList(rows.map(plainRow)));
  return read.ok ? { ...read, rows: read.rows.map(plainRow) } : read;
}

const plainRow = ({ row, cells }: SheetRow): TableRow => ({ row, cells: cells.map(plainCell) });

const plainCell = (cell: SheetCell): CellValue =>
  cell !== null && typeof cell === 'object' ? cell.serial : cell;

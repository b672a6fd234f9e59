import type { JsonProblem } from '../../json/locateJsonProblem';
import { decodeText } from '../../lists/decodeText';
import type { HiddenParts } from '../../lists/readWorkbook';
import type { Separator } from '../../lists/splitCsv';
import { type ColumnChoice, type ColumnsFound, findColumns, statedRows } from './columns';
import { readCsv } from './csv';
import { readBundle } from './fhir/bundle';
import { fhirRows, type LeftOut } from './fhir/rows';
import type { ImportField } from './fields';
import { IMPORT_LIMITS, type StatedRow, type TableRow } from './table';
import { readXlsx } from './xlsx';

/** Why nothing of a file can be read. */
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
  | { code: 'not-json'; at: JsonProblem }
  | { code: 'not-a-bundle' }
  | { code: 'no-rows' }
  | { code: 'too-many-rows'; rows: number };

/** A file by its rows, with how it was understood. */
export interface ReadList {
  rows: StatedRow<ImportField>[];
  understood:
    | { format: 'csv'; separator: Separator; columns: ColumnsFound }
    | { format: 'xlsx'; sheet: string; sheets: string[]; hidden: HiddenParts; columns: ColumnsFound }
    | { format: 'fhir'; ignored: { kind: string; count: number }[]; leftOut: LeftOut[] };
}

export type ListFileRead = { ok: true; list: ReadList } | { ok: false; fault: FileFault };

export interface FileChoices {
  sheet: string | null;
  columns: Partial<ColumnChoice>;
}

const begins = (bytes: Uint8Array, ...first: number[]) => first.every((byte, at) => bytes[at] === byte);

/**
 * Reads a theatre list from the bytes of a file: an XLSX workbook, a FHIR bundle in JSON, or else a CSV. What is in it is
 * told by its first bytes, not by its name.
 */
export async function readListFile(bytes: Uint8Array, choices: FileChoices): Promise<ListFileRead> {
  if (bytes.byteLength === 0) return refuse({ code: 'empty' });
  if (bytes.byteLength > IMPORT_LIMITS.bytes) return refuse({ code: 'too-large', bytes: bytes.byteLength });
  if (begins(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return refuse({ code: 'old-workbook' });
  if (begins(bytes, 0x50, 0x4b)) return workbook(bytes, choices);
  const text = textOf(bytes);
  if (text === null) return refuse({ code: 'not-text' });
  if (text.trim() === '') return refuse({ code: 'empty' });
  return /^\s*[{[]/.test(text) ? bundle(text) : csv(text, choices);
}

const refuse = (fault: FileFault): Extract<ListFileRead, { ok: false }> => ({ ok: false, fault });

/** UTF-8, or what a spreadsheet calls Unicode text; anything else would be guessed. */
function textOf(bytes: Uint8Array): string | null {
  const read = decodeText(bytes, null);
  return read.ok && read.encoding !== 'windows-1252' ? read.text : null;
}

function csv(text: string, choices: FileChoices): ListFileRead {
  const read = readCsv(text);
  if (!read.ok)
    return refuse(read.why === 'empty' ? { code: 'empty' } : { code: 'broken-quote', line: read.line });
  return table(read.rows, choices, (columns) => ({ format: 'csv', separator: read.separator, columns }));
}

/**
 * The sheet that is named; without a name the first shown one that is a list, which is told. Where none is, what the first is
 * refused for.
 */
async function workbook(bytes: Uint8Array, choices: FileChoices): Promise<ListFileRead> {
  const read = await readXlsx(bytes, choices.sheet, (rows) => rowsUnder(rows, choices).ok);
  if (read.ok) {
    const { sheet, sheets, hidden } = read;
    return table(read.rows, choices, (columns) => ({ format: 'xlsx', sheet, sheets, hidden, columns }));
  }
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

type RowsUnder =
  | { ok: true; under: TableRow[]; columns: ColumnsFound }
  | Extract<ListFileRead, { ok: false }>;

/** The rows under the headings that hold something. */
function rowsUnder(all: readonly TableRow[], choices: FileChoices): RowsUnder {
  const columns = findColumns(all, choices.columns);
  if (columns === null) return refuse({ code: 'no-headings' });
  const under = all.filter(
    ({ row, cells }) => row > columns.headingRow && cells.some((value) => value !== null),
  );
  if (under.length === 0) return refuse({ code: 'no-rows' });
  if (under.length > IMPORT_LIMITS.rows) return refuse({ code: 'too-many-rows', rows: under.length });
  return { ok: true, under, columns };
}

function table(
  all: readonly TableRow[],
  choices: FileChoices,
  understood: (columns: ColumnsFound) => ReadList['understood'],
): ListFileRead {
  const found = rowsUnder(all, choices);
  if (!found.ok) return found;
  const { under, columns } = found;
  return { ok: true, list: { rows: statedRows(under, columns), understood: understood(columns) } };
}

function bundle(text: string): ListFileRead {
  const read = readBundle(text);
  if (!read.ok)
    return refuse(read.why === 'notJson' ? { code: 'not-json', at: read.at } : { code: 'not-a-bundle' });
  const { rows, leftOut } = fhirRows(read.bundle);
  if (rows.length + leftOut.length === 0) return refuse({ code: 'no-rows' });
  if (rows.length > IMPORT_LIMITS.rows) return refuse({ code: 'too-many-rows', rows: rows.length });
  const ignored = [...read.bundle.ignored].map(([kind, count]) => ({ kind, count }));
  return { ok: true, list: { rows, understood: { format: 'fhir', ignored, leftOut } } };
}

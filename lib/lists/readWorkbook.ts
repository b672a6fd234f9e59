import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import readWorkbook from 'read-excel-file/universal';
import { serialOfMs } from './serial';
import { columnNumber, type MergedCells, type SheetLook, sheetLooks } from './sheetLooks';

/** What is not read, so that no file fills the memory. */
export interface WorkbookLimits {
  columns: number;
  /** Titles above and notes below the rows included. */
  lastRow: number;
  /** Of all its parts together, unpacked. */
  unpackedBytes: number;
}

/** A text, a number, a day or time as its serial of the 1900 system, or `null` where nothing is written. */
export type SheetCell = string | number | { serial: number } | null;

/** A row of a sheet; `row` counts as the spreadsheet does, from 1. */
export interface SheetRow {
  row: number;
  cells: SheetCell[];
}

/** Rows and columns that hold something and that the spreadsheet does not show; they are read like the others. */
export interface HiddenParts {
  rows: number[];
  columns: number[];
}

export type WorkbookRead =
  | { ok: true; rows: SheetRow[]; sheets: string[]; sheet: string; hidden: HiddenParts }
  | { ok: false; why: 'unreadable' | 'tooLargeInside' | 'noSheet' }
  | { ok: false; why: 'sheetTooLarge'; cell: string }
  | { ok: false; why: 'noSuchSheet'; sheet: string; sheets: string[] };

const MOST_ENTRIES = 500;
/**
 * Longest text or tag of a part. A cell holds 32,767 characters at most, each written as six where it is worst. The reader goes
 * over a text that has no end again and again in ever smaller steps, which a few megabytes make endless.
 */
const LONGEST_TOKEN = 300_000;
/** Between the first days of the two systems (ECMA-376 Part 1, 18.17.4.1). */
const DAYS_TO_1904 = 1462;

/** What stands in a cell that a merged cell covers, beside others that hold something: nobody can tell whether it means the same. */
export const COVERED = '(part of a merged cell)';

/**
 * One sheet of an XLSX workbook, by its name; without a name the first that is shown and looks like a list, or else the first
 * that is shown. Days and times come as serials of the 1900 system, also from a workbook that counts from 1904.
 */
export async function readWorkbookSheet(
  bytes: Uint8Array,
  sheet: string | null,
  limits: WorkbookLimits,
  isList: (rows: readonly SheetRow[]) => boolean = () => true,
): Promise<WorkbookRead> {
  const safe = madeSafe(bytes, limits);
  if (!safe.ok) return safe;
  let workbook: Awaited<ReturnType<typeof readWorkbook>>;
  try {
    workbook = await readWorkbook(safe.archive);
  } catch {
    // whatever the reader says of it, it is no workbook
    return { ok: false, why: 'unreadable' };
  }
  const sheets = workbook.map((one) => one.sheet);
  if (sheets.length === 0) return { ok: false, why: 'noSheet' };
  const looks = safe.looks.length === sheets.length ? safe.looks : [];
  const cell = (value: unknown) => cellOf(value, safe.from1904);
  const read = (at: number): Extract<WorkbookRead, { ok: true }> => {
    const rows = (workbook[at]?.data ?? []).map((cells, row) => ({ row: row + 1, cells: cells.map(cell) }));
    const look = looks[at];
    if (look) markCovered(rows, look.merged);
    const hidden = look ? hiddenParts(rows, look) : { rows: [], columns: [] };
    return { ok: true, rows, sheets, sheet: sheets[at] ?? '', hidden };
  };
  if (sheet !== null) {
    const at = sheets.indexOf(sheet);
    return at < 0 ? { ok: false, why: 'noSuchSheet', sheet, sheets } : read(at);
  }
  const shown = sheets.flatMap((_, at) => (looks[at]?.isHidden ? [] : [at]));
  for (const at of shown) {
    const one = read(at);
    if (isList(one.rows)) return one;
  }
  return read(shown[0] ?? 0);
}

/** Cells under the first of a merged block say so, where their row holds something else; a block of one row hides none. */
function markCovered(rows: readonly SheetRow[], merged: readonly MergedCells[]): void {
  const own = rows.map(({ cells }) => cells.some((cell) => cell !== null));
  // blocks of a workbook do not overlap, so that all of them together have no more rows than there are cells
  let mostRows = rows.reduce((sum, { cells }) => sum + cells.length, 0);
  for (const { top, left, bottom, right } of merged) {
    if ((rows[top - 1]?.cells[left - 1] ?? null) === null) continue;
    for (let row = top; row < Math.min(bottom, rows.length) && mostRows > 0; row += 1) {
      mostRows -= 1;
      const cells = rows[row]?.cells;
      if (!cells || own[row] !== true) continue;
      for (let at = left - 1; at < Math.min(right, cells.length); at += 1) cells[at] ??= COVERED;
    }
  }
}

function hiddenParts(rows: readonly SheetRow[], { hiddenRows, hiddenColumns }: SheetLook): HiddenParts {
  const holds = (column: number) => rows.some(({ cells }) => (cells[column - 1] ?? null) !== null);
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length));
  return {
    rows: rows
      .filter(({ row, cells }) => hiddenRows.has(row) && cells.some((cell) => cell !== null))
      .map(({ row }) => row),
    columns: Array.from({ length: width }, (_, at) => at + 1).filter(
      (column) => hiddenColumns.some(([from, to]) => from <= column && column <= to) && holds(column),
    ),
  };
}

/** A cell as the reader has it: a text, a number, a truth, a moment or `null`. */
function cellOf(value: unknown, from1904: boolean): SheetCell {
  if (value instanceof Date) {
    const serial = serialOfMs(value.getTime());
    // a time of no day lies on day 0, which the reader has moved with the days
    return { serial: from1904 && Math.floor(serial) === DAYS_TO_1904 ? serial - DAYS_TO_1904 : serial };
  }
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'string') return value.trim() || null;
  return typeof value === 'number' ? value : null;
}

type Safe =
  | { ok: true; archive: ArrayBuffer; from1904: boolean; looks: SheetLook[] }
  | Extract<WorkbookRead, { ok: false }>;

/**
 * The archive with what the reader would pass over in silence made visible, and without what would fill the memory: it
 * drops the errors of formulas as if the cells were empty, and makes room for every row up to the last.
 */
function madeSafe(bytes: Uint8Array, limits: WorkbookLimits): Safe {
  let unpacked = 0;
  let entries = 0;
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!name.endsWith('.xml') && !name.endsWith('.rels')) return false;
        // what other programs keep beside the sheets
        if (name.startsWith('customXml/')) return false;
        unpacked += originalSize;
        entries += 1;
        // nothing is unpacked beyond the size that is stated, and no more than may be
        return unpacked <= limits.unpackedBytes && entries <= MOST_ENTRIES;
      },
    });
  } catch {
    return { ok: false, why: 'unreadable' };
  }
  if (unpacked > limits.unpackedBytes || entries > MOST_ENTRIES) return { ok: false, why: 'tooLargeInside' };
  let from1904 = false;
  for (const [name, file] of Object.entries(files)) {
    const xml = strFromU8(file);
    if (!hasShortTokens(xml)) return { ok: false, why: 'unreadable' };
    if (FROM_1904.test(xml)) {
      from1904 = true;
      // the reader knows a truth by 1 alone, and some programs write it as a word
      files[name] = strToU8(xml.replace(FROM_1904, '$11$3'));
    }
    if (!/<(?:\w+:)?sheetData\b/.test(xml)) continue;
    const far = farCell(xml, limits);
    if (far !== null) return { ok: false, why: 'sheetTooLarge', cell: far };
    files[name] = strToU8(errorsShown(xml));
  }
  const packed = zipSync(files, { level: 0 });
  const archive = new ArrayBuffer(packed.byteLength);
  new Uint8Array(archive).set(packed);
  const xmlOf = (name: string) => (files[name] ? strFromU8(files[name]) : null);
  return { ok: true, archive, from1904, looks: sheetLooks(xmlOf) };
}

/** Whether no text, tag, comment or raw text of it is longer than any of a workbook. */
function hasShortTokens(xml: string): boolean {
  for (let from = 0; from < xml.length; ) {
    const tag = xml.indexOf('<', from);
    if ((tag < 0 ? xml.length : tag) - from > LONGEST_TOKEN) return false;
    if (tag < 0) return true;
    const [, last] = ENDS.find(([first]) => xml.startsWith(first, tag)) ?? ['<', '>'];
    const end = xml.indexOf(last, tag);
    if ((end < 0 ? xml.length : end) - tag > LONGEST_TOKEN) return false;
    if (end < 0) return true;
    from = end + last.length;
  }
  return true;
}

const ENDS: readonly (readonly [string, string])[] = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
  ['<?', '?>'],
];

/** The first cell that holds something and lies beyond what is read. */
function farCell(xml: string, limits: WorkbookLimits): string | null {
  for (const [, column = '', row = ''] of xml.matchAll(/<(?:\w+:)?c\b[^<>]*?\br="([A-Z]{1,4})(\d{1,9})"/g)) {
    if (columnNumber(column) > limits.columns || Number(row) > limits.lastRow) return `${column}${row}`;
  }
  return null;
}

/** Counting days from 1904 (ECMA-376 Part 1, 18.2.28; a truth is `1` or `true`). */
const FROM_1904 = /(<(?:\w+:)?workbookPr\b[^<>]*\bdate1904=")(1|true)(")/;

/** A cell with all in it up to its own end, and never over the beginning of the next: however broken, it is gone over once. */
const CELL = /<((?:\w+:)?)c\b([^<>]*[^/<>])?>([^<]*(?:<(?!\/?(?:\w+:)?c[\s/>])[^<]*)*)<\/\1c>/g;
/** Errors, and days written out, which the reader would take for the server's own time zone. */
const AS_TEXT = /(\st=")[ed](")/;

/** A value that says something; some programs write an empty one where they have not worked a formula out. */
const WORKED_OUT = /<(?:\w+:)?v(?:\s[^<>]*[^/<>])?>\s*[^<\s]/;

/** An error or a formula that was not worked out becomes a text that says so, which no field takes for empty. */
function errorsShown(xml: string): string {
  return xml.replace(CELL, (cell, prefix: string, attributes = '', inside: string) => {
    if (AS_TEXT.test(attributes))
      return `<${prefix}c${attributes.replace(AS_TEXT, '$1str$2')}>${inside}</${prefix}c>`;
    if (!/<(?:\w+:)?f\b/.test(inside) || WORKED_OUT.test(inside)) return cell;
    // a text that was worked out may be empty; a figure may not
    if (/\st="str"/.test(attributes) && /<(?:\w+:)?v\b/.test(inside)) return cell;
    const untyped = attributes.replace(/\st="[^"]*"/, '');
    return `<${prefix}c${untyped} t="str"><${prefix}v>#NOT WORKED OUT</${prefix}v></${prefix}c>`;
  });
}

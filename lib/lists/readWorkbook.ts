import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import readWorkbook from 'read-excel-file/universal';
import { serialOfMs } from './serial';

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

export type WorkbookRead =
  | { ok: true; rows: SheetRow[]; sheets: string[]; sheet: string }
  | { ok: false; why: 'unreadable' | 'tooLargeInside' | 'noSheet' }
  | { ok: false; why: 'sheetTooLarge'; cell: string }
  | { ok: false; why: 'noSuchSheet'; sheet: string; sheets: string[] };

const MOST_ENTRIES = 500;
/** Between the first days of the two systems (ECMA-376 Part 1, 18.17.4.1). */
const DAYS_TO_1904 = 1462;

/**
 * One sheet of an XLSX workbook, by its name or the first. Days and times come as serials of the 1900 system, also from a
 * workbook that counts from 1904.
 */
export async function readWorkbookSheet(
  bytes: Uint8Array,
  sheet: string | null,
  limits: WorkbookLimits,
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
  const chosen = sheet === null ? workbook[0] : workbook.find((one) => one.sheet === sheet);
  if (chosen === undefined) return { ok: false, why: 'noSuchSheet', sheet: sheet ?? '', sheets };
  const cell = (value: unknown) => cellOf(value, safe.from1904);
  const rows = chosen.data.map((cells, at) => ({ row: at + 1, cells: cells.map(cell) }));
  return { ok: true, rows, sheets, sheet: chosen.sheet };
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

type Safe = { ok: true; archive: ArrayBuffer; from1904: boolean } | Extract<WorkbookRead, { ok: false }>;

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
    if (/<(?:\w+:)?workbookPr\b[^>]*\bdate1904="1"/.test(xml)) from1904 = true;
    if (!/<(?:\w+:)?sheetData\b/.test(xml)) continue;
    const far = farCell(xml, limits);
    if (far !== null) return { ok: false, why: 'sheetTooLarge', cell: far };
    files[name] = strToU8(errorsShown(xml));
  }
  const packed = zipSync(files, { level: 0 });
  const archive = new ArrayBuffer(packed.byteLength);
  new Uint8Array(archive).set(packed);
  return { ok: true, archive, from1904 };
}

/** The first cell that holds something and lies beyond what is read. */
function farCell(xml: string, limits: WorkbookLimits): string | null {
  for (const [, column = '', row = ''] of xml.matchAll(/<(?:\w+:)?c\b[^>]*?\br="([A-Z]{1,4})(\d{1,9})"/g)) {
    const at = [...column].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
    if (at > limits.columns || Number(row) > limits.lastRow) return `${column}${row}`;
  }
  return null;
}

const CELL = /<((?:\w+:)?)c\b([^>]*[^/>])?>([\s\S]*?)<\/\1c>/g;
/** Errors, and days written out, which the reader would take for the server's own time zone. */
const AS_TEXT = /(\st=")[ed](")/;

/** An error or a formula that was not worked out becomes a text that says so, which no field takes for empty. */
function errorsShown(xml: string): string {
  return xml.replace(CELL, (cell, prefix: string, attributes = '', inside: string) => {
    if (AS_TEXT.test(attributes))
      return `<${prefix}c${attributes.replace(AS_TEXT, '$1str$2')}>${inside}</${prefix}c>`;
    if (!/<(?:\w+:)?f\b/.test(inside) || /<(?:\w+:)?v\b/.test(inside)) return cell;
    const untyped = attributes.replace(/\st="[^"]*"/, '');
    return `<${prefix}c${untyped} t="str"><${prefix}v>#NOT WORKED OUT</${prefix}v></${prefix}c>`;
  });
}

import { hasValidCheckDigit } from '../calculations/identifier/checkDigits';
import { momentOfSerial } from '../lists/serial';
import { byteOfWindows1252 } from '../lists/windows1252';
import type { PlainDate } from '../quantities/plainDate';
import type { ListColumn } from './list';
import type { FileCell } from './readFile';

/** What an office program may have done to a cell. */
export type Damage =
  /** Zeros before a number are gone. */
  | 'zerosLost'
  /** Written with an exponent: 1.23E+13. */
  | 'exponent'
  /** More digits than a spreadsheet keeps: the last are zeros. */
  | 'digitsLost'
  /** A code such as 3-12 became a day. */
  | 'madeADate'
  /** A code got `.0` behind it. */
  | 'pointZero'
  /** Spaces that are none, or can't be seen. */
  | 'spaces'
  /** Dashes and quotes set as in print. */
  | 'marks'
  /** Letters read in another encoding than they were written in. */
  | 'letters'
  /** The letter O beside digits. */
  | 'letterO';

/**
 * A suspicion with what speaks for it. `asks`: a person says whether it is taken as repaired or as it stands; `stops`: it
 * can't be right as it stands, and nothing here can repair it; `note`: to be seen.
 */
export interface Suspicion {
  damage: Damage;
  weight: 'asks' | 'stops' | 'note';
  /** What it most likely was; `null` where that is not known. */
  repaired: string | null;
  /** The day a code was made into. */
  date?: PlainDate | null;
  /** How long the others of the column are. */
  usual?: number;
}

export interface DamageContext {
  /** Codes that are on record for this column. */
  known: ReadonlySet<string>;
  /** Digits that nearly all codes of the column have, none of them with a zero first; `null` where they differ. */
  usualLength: number | null;
}

const isNameLike = ({ entry }: ListColumn) => entry === 'code' || entry === 'lot' || entry === 'gtin';

/**
 * What a cell looks as if an office program had done to it, the first that is found; `null` for none. Nothing is repaired
 * here: the suspicion says what it would come to.
 */
export function suspect(cell: FileCell, column: ListColumn, context: DamageContext): Suspicion | null {
  const { text, form } = cell;
  if (form === 'date') return column.entry === 'date' ? null : dateCell(text, context);
  if (text.includes('\uFFFD')) return { damage: 'letters', weight: 'stops', repaired: null };
  const letters = otherEncoding(text);
  if (letters !== null) return { damage: 'letters', weight: 'asks', repaired: letters };
  if (isNameLike(column) || column.entry === 'text') {
    const spaced = text.replace(ODD_SPACES, ' ').replace(UNSEEN, '').trim();
    if (spaced !== text) return { damage: 'spaces', weight: 'asks', repaired: spaced };
  }
  if (!isNameLike(column)) return null;
  return (
    exponent(cell, column) ??
    digitsLost(cell) ??
    pointZero(text) ??
    marks(text) ??
    namedDate(text, context) ??
    zerosLost(text, column, context) ??
    letterO(text, column)
  );
}

const ODD_SPACES = /[\u00a0\u2007\u202f]/g;
/** Zero-width characters, soft hyphens and stray byte order marks. */
const UNSEEN = /\u200b|\u200c|\u200d|\u2060|\ufeff|\u00ad/g;

function dateCell(text: string, context: DamageContext): Suspicion {
  const date = momentOfSerial(Number(text))?.date ?? null;
  const code =
    date === null ? null : onlyKnown(spellings(Number(date.slice(8, 10)), Number(date.slice(5, 7))), context);
  return { damage: 'madeADate', weight: code === null ? 'stops' : 'asks', repaired: code, date };
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const DAY_MONTH = /^(\d{1,2})[- ]([a-z]{3})$/i;
const MONTH_DAY = /^([a-z]{3})[- ](\d{1,2})$/i;

/** `03-Dec`, as programs show a day they made of 3-12. */
function namedDate(text: string, context: DamageContext): Suspicion | null {
  const found = DAY_MONTH.exec(text) ?? MONTH_DAY.exec(text);
  if (!found) return null;
  const [first, second] = [found[1] ?? '', found[2] ?? ''];
  const [day, name] = /\d/.test(first) ? [first, second] : [second, first];
  const month = MONTHS.indexOf(name.toLowerCase()) + 1;
  if (month === 0 || context.known.has(text)) return null;
  return { damage: 'madeADate', weight: 'asks', repaired: onlyKnown(spellings(Number(day), month), context) };
}

/** What may have been typed for a day to be made of it. */
function spellings(day: number, month: number): string[] {
  const forms = (n: number) => [String(n), String(n).padStart(2, '0')];
  return ['-', '/', '.'].flatMap((sign) =>
    forms(day).flatMap((d) => forms(month).flatMap((m) => [`${d}${sign}${m}`, `${m}${sign}${d}`])),
  );
}

/** The one of some spellings that is on record. */
function onlyKnown(candidates: readonly string[], { known }: DamageContext): string | null {
  const found = [...new Set(candidates)].filter((one) => known.has(one));
  return found.length === 1 ? (found[0] ?? null) : null;
}

const EXPONENT = /^(\d)(?:[.,](\d+))?E(\+?)(\d{1,2})$/i;

function exponent({ text }: FileCell, { entry }: ListColumn): Suspicion | null {
  const found = EXPONENT.exec(text);
  if (!found) return null;
  const [, first = '', decimals = '', plus, power] = found;
  const all = decimals.length === Number(power);
  // as a code somebody may have chosen 2E5; nobody chooses 1.23E+13
  const mayBeMeant = entry !== 'gtin' && decimals === '' && plus === '';
  return {
    damage: 'exponent',
    weight: all || mayBeMeant ? 'asks' : 'stops',
    repaired: all ? `${first}${decimals}` : null,
  };
}

/** Programs keep fifteen digits of a number; those behind are zeros from then on. */
const digitsLost = ({ text, form }: FileCell): Suspicion | null =>
  form === 'number' && /^\d{16,}$/.test(text)
    ? { damage: 'digitsLost', weight: 'stops', repaired: null }
    : null;

function pointZero(text: string): Suspicion | null {
  const found = /^(\d+)[.,]0+$/.exec(text);
  return found ? { damage: 'pointZero', weight: 'asks', repaired: found[1] ?? null } : null;
}

const DASHES = /[\u2010-\u2015\u2212]/g;
const DOUBLE_QUOTES = /[\u201c-\u201f]/g;
const SINGLE_QUOTES = /[\u2018-\u201b]/g;

function marks(text: string): Suspicion | null {
  const plain = text.replace(DASHES, '-').replace(DOUBLE_QUOTES, '"').replace(SINGLE_QUOTES, "'");
  return plain === text ? null : { damage: 'marks', weight: 'asks', repaired: plain };
}

const MOST_ZEROS = 6;

function zerosLost(
  text: string,
  { entry }: ListColumn,
  { known, usualLength }: DamageContext,
): Suspicion | null {
  if (!/^\d+$/.test(text) || known.has(text)) return null;
  if (entry === 'gtin') {
    const padded = text.padStart(14, '0');
    return text.length >= 8 && text.length < 14 && hasValidCheckDigit(padded)
      ? { damage: 'zerosLost', weight: 'asks', repaired: padded }
      : null;
  }
  const padded = Array.from({ length: MOST_ZEROS }, (_, at) => text.padStart(text.length + at + 1, '0'));
  const onRecord = padded.filter((one) => known.has(one));
  if (onRecord.length === 1) return { damage: 'zerosLost', weight: 'asks', repaired: onRecord[0] ?? null };
  if (usualLength === null || text.length >= usualLength || usualLength - text.length > MOST_ZEROS)
    return null;
  return {
    damage: 'zerosLost',
    weight: 'asks',
    repaired: text.padStart(usualLength, '0'),
    usual: usualLength,
  };
}

const letterO = (text: string, { entry }: ListColumn): Suspicion | null =>
  entry === 'lot' && /\dO|O\d/.test(text) ? { damage: 'letterO', weight: 'note', repaired: null } : null;

/** The text with its letters put right, where it is UTF-8 that was read as Windows-1252: `GrÃ¶ÃŸe`. */
function otherEncoding(text: string): string | null {
  if (!/[ÃÂâ]/.test(text)) return null;
  const bytes: number[] = [];
  for (const letter of text) {
    const byte = byteOfWindows1252(letter);
    if (byte === null) return null;
    bytes.push(byte);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Uint8Array.from(bytes));
  } catch {
    return null;
  }
}

/** How many digits nearly all codes of a column have, where none of them begins with a zero: then zeros may be gone. */
export function usualLengthOf(cells: readonly string[]): number | null {
  const digits = cells.filter((cell) => /^\d+$/.test(cell));
  if (digits.length < LEAST_TO_JUDGE || digits.length < cells.length * NEARLY_ALL) return null;
  const counts = new Map<number, number>();
  for (const { length } of digits) counts.set(length, (counts.get(length) ?? 0) + 1);
  const [length = 0, most = 0] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [];
  if (most < digits.length * NEARLY_ALL || most === digits.length) return null;
  return digits.some((cell) => cell.length === length && cell.startsWith('0')) ? null : length;
}

/** With fewer, or more that differ, the codes of a column are simply of several lengths. */
const LEAST_TO_JUDGE = 5;
const NEARLY_ALL = 0.8;

/** The sign before the decimals of a file. */
export type DecimalSign = 'point' | 'comma';

export type NumberRead = { ok: true; text: string } | { ok: false; why: 'notANumber' | 'eitherNumber' };

/** Signs some put between thousands, other than point and comma; the apostrophe is Swiss. */
const GROUPING = /(?<=\d)['’\u0020\u00a0\u2007\u2009\u202f](?=\d{3}(?:\D|$))/gu;
const MINUS = /^[-−–]/;

/**
 * The sign before the decimals of a file, from all its numbers that can be read in one way only: `2.75` and `1,234.5` say
 * point, `2,75` and `1.234,5` comma. `null` where none says it, `mixed` where two contradict each other.
 */
export function decimalSignOf(cells: readonly string[]): DecimalSign | 'mixed' | null {
  const seen = new Set(cells.map((cell) => signOf(plain(cell))).filter((sign) => sign !== null));
  if (seen.size > 1) return 'mixed';
  return [...seen][0] ?? null;
}

function signOf(text: string): DecimalSign | null {
  const parts = /^-?(\d+)((?:[.,]\d+)+)$/.exec(text);
  if (!parts) return null;
  const [, first = '', rest = ''] = parts;
  const signs = new Set(rest.replace(/\d/g, ''));
  const groups = rest.split(/[.,]/).slice(1);
  const last = rest[rest.length - (groups.at(-1)?.length ?? 0) - 1];
  if (signs.size === 2) return last === '.' ? 'point' : 'comma';
  // the same sign twice stands between thousands
  if (groups.length > 1) return last === '.' ? 'comma' : 'point';
  const mayBeThousands = groups[0]?.length === 3 && first.length <= 3 && !first.startsWith('0');
  return mayBeThousands ? null : last === '.' ? 'point' : 'comma';
}

const plain = (cell: string) => cell.trim().replace(GROUPING, '').replace(MINUS, '-');

/**
 * A number as a text writes it, in the shortest way with a point: `2,70 → 2.7`. Where it could be either of two numbers
 * (`1,234`), the sign of the file must be known; none is guessed.
 */
export function readNumber(cell: string, sign: DecimalSign | 'mixed' | null): NumberRead {
  const text = plain(cell);
  if (/^-?\d{1,15}$/.test(text)) return shortest(text);
  if (!/^-?\d{1,15}(?:[.,]\d{1,15})+$/.test(text)) return { ok: false, why: 'notANumber' };
  const own = signOf(text);
  const known = own ?? (sign === 'mixed' ? null : sign);
  if (known === null) return { ok: false, why: 'eitherNumber' };
  const [decimal, grouping] = known === 'point' ? ['.', ','] : [',', '.'];
  const parts = text.split(decimal);
  const [whole = '', fraction = ''] = parts;
  const grouped = whole.includes(grouping);
  if (parts.length > 2 || fraction.includes(grouping)) return { ok: false, why: 'notANumber' };
  const groups = grouping === '.' ? /^-?\d{1,3}(?:\.\d{3})+$/ : /^-?\d{1,3}(?:,\d{3})+$/;
  if (grouped && !groups.test(whole)) return { ok: false, why: 'notANumber' };
  return shortest(`${whole.replaceAll(grouping, '')}${fraction ? `.${fraction}` : ''}`);
}

function shortest(text: string): NumberRead {
  const [, minus = '', whole = '', fraction = ''] = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text) ?? [];
  const digits = whole.replace(/^0+(?=\d)/, '');
  const decimals = fraction.replace(/0+$/, '');
  const size = decimals ? `${digits}.${decimals}` : digits;
  return { ok: true, text: size === '0' ? '0' : `${minus}${size}` };
}

/** Digits that a spreadsheet keeps of a number (ECMA-376 keeps binary64; office programs show and save 15 digits). */
const DIGITS_KEPT = 15;

/** A number of a spreadsheet in digits, without exponent and without what binary fractions add after fifteen digits. */
export function numberText(value: number): string {
  if (Number.isInteger(value) && Math.abs(value) < 1e21) return BigInt(value).toString();
  const rounded = Number(value.toPrecision(DIGITS_KEPT));
  const text = String(rounded);
  return text.includes('e') ? rounded.toFixed(20).replace(/\.?0+$/, '') : text;
}

/** A number for a file, so that it can be read in one way only: `2.875` could be a thousand times as much, `2.8750` can't. */
export const unmistakable = (text: string): string =>
  /^-?[1-9]\d{0,2}\.\d{3}$/.test(text) ? `${text}0` : text;

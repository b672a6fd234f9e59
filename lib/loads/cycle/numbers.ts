/** How decimals are written in a file. */
export type DecimalMark = 'point' | 'comma' | 'none';

const PLAIN = /^[+-]?\d+$/;
const POINT = /^[+-]?\d+\.\d+$/;
const COMMA = /^[+-]?\d+,\d+$/;
/** `1,234`: a thousand and more in one country, a little over one in another. */
const EITHER_WAY = /^[+-]?\d{1,3},\d{3}$/;

export type CellNumber =
  | { ok: true; value: number }
  | { ok: false; why: 'empty' | 'notANumber' | 'mixedMarks' | 'ambiguous' };

/**
 * The mark of a whole file, from all its number cells: a comma is decimal only where some cell can't be read otherwise.
 * `mixed` where both are seen.
 */
export function decimalMarkOf(cells: readonly string[]): DecimalMark | 'mixed' {
  const point = cells.some((cell) => POINT.test(cell));
  const comma = cells.some((cell) => COMMA.test(cell) && !EITHER_WAY.test(cell));
  if (point && comma) return 'mixed';
  return point ? 'point' : comma ? 'comma' : 'none';
}

export function readNumber(cell: string, mark: DecimalMark): CellNumber {
  if (cell === '') return { ok: false, why: 'empty' };
  if (PLAIN.test(cell)) return { ok: true, value: Number(cell) };
  if (POINT.test(cell))
    return mark === 'comma' ? { ok: false, why: 'mixedMarks' } : { ok: true, value: Number(cell) };
  if (COMMA.test(cell)) {
    if (mark === 'point') return { ok: false, why: 'mixedMarks' };
    if (mark === 'none') return { ok: false, why: 'ambiguous' };
    return { ok: true, value: Number(cell.replace(',', '.')) };
  }
  return { ok: false, why: 'notANumber' };
}

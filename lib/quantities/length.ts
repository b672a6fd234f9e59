/**
 * Lengths are whole micrometres wherever they are compared, so that 2.7 mm is exactly 2700
 * and no comparison ever depends on floating point.
 */

/** Millimetres as written (`'2.7'`, `2.7`, `'2,7'`) to whole micrometres. Throws on what is not a plain decimal. */
export function micronsFromMm(written: string | number): number {
  const text = String(written).trim().replace(',', '.');
  const match = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text);
  if (!match) throw new RangeError(`not a length in millimetres: ${JSON.stringify(written)}`);
  const [, sign, whole, fraction = ''] = match;
  if (/[^0]/.test(fraction.slice(3))) {
    throw new RangeError(`finer than a micrometre: ${JSON.stringify(written)}`);
  }
  const microns = Number(whole) * 1000 + Number(fraction.slice(0, 3).padEnd(3, '0'));
  return sign === '-' && microns !== 0 ? -microns : microns;
}

/** Whole micrometres to millimetres, for drawing and arithmetic that is not compared. */
export function mmFromMicrons(um: number): number {
  return um / 1000;
}

/** `2700 → '2.7'`, `16000 → '16'`: the shortest exact decimal, no unit. */
export function writeMm(um: number): string {
  const sign = um < 0 ? '-' : '';
  const size = Math.abs(um);
  const fraction = String(size % 1000)
    .padStart(3, '0')
    .replace(/0+$/, '');
  return `${sign}${Math.trunc(size / 1000)}${fraction && `.${fraction}`}`;
}

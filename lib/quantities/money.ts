/** Whole pence to pounds as printed: `14500 → '£145.00'`. */
export function writePence(pence: number): string {
  const sign = pence < 0 ? '−' : '';
  const size = Math.abs(pence);
  const pounds = Math.trunc(size / 100).toLocaleString('en-GB');
  return `${sign}£${pounds}.${String(size % 100).padStart(2, '0')}`;
}

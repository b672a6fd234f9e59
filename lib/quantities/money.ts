/** A sum of money in whole pence as it is shown: `123450 → '£1,234.50'`, `-84 → '−£0.84'`; never through a float's text. */
export function writePence(pence: number): string {
  const whole = Math.round(Math.abs(pence));
  const pounds = String(Math.floor(whole / 100)).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${pence < 0 && whole > 0 ? '−' : ''}£${pounds}.${String(whole % 100).padStart(2, '0')}`;
}

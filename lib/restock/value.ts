/** What lines cost together, in pence; `null` where the price of one of them is not stated. */
export function penceOf(lines: readonly { ordered: number; unitPence: number | null }[]): number | null {
  return lines.reduce<number | null>(
    (sum, { ordered, unitPence }) => (sum === null || unitPence === null ? null : sum + ordered * unitPence),
    0,
  );
}

/** When something was done and when it was entered, against each other. */
export type Lateness =
  | { kind: 'atOnce' }
  /** Entered so many minutes after it was done: from memory, or kept on the device while the network was away. */
  | { kind: 'late'; minutes: number }
  /** Said to have been done after it was entered: a clock was wrong. */
  | { kind: 'ahead'; minutes: number };

/** Two clocks of one hospital may differ by this and nobody was wrong. */
const CLOCKS_DIFFER_MINUTES = 2;

/** `lateAfterMinutes`: the local setting `bench.lateAfterMinutes`; an entry that took exactly so long is not late. */
export function latenessOf(
  { doneAt, enteredAt }: { doneAt: string; enteredAt: string },
  lateAfterMinutes: number,
): Lateness {
  const minutes = (Date.parse(enteredAt) - Date.parse(doneAt)) / 60_000;
  if (minutes > lateAfterMinutes) return { kind: 'late', minutes: Math.floor(minutes) };
  if (minutes < -CLOCKS_DIFFER_MINUTES) return { kind: 'ahead', minutes: Math.floor(-minutes) };
  return { kind: 'atOnce' };
}

import { unreadable } from '../pdf/labels';
import type { BenchRow } from './row';

const LABELS = 1_000;

/** Reads a thousand labels back, sound and worn by a dot either way; throws when one of the three thousand does not. */
export async function bench(): Promise<BenchRow[]> {
  const times: number[] = [];
  const wrong: string[] = [];
  for (let n = 1; n <= LABELS; n += 1) {
    const began = performance.now();
    wrong.push(...(await unreadable(n)));
    times.push(performance.now() - began);
  }
  if (wrong.length > 0)
    throw new Error(`${wrong.length} prints do not read: ${wrong.slice(0, 5).join('; ')}`);
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.floor(times.length * share)] ?? 0;
  return [
    { name: `${LABELS} labels, each drawn and read three ways`, p50: at(0.5), p95: at(0.95), bound: null },
  ];
}

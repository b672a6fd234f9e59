import { unreadable } from '../pdf/labels';
import { type BenchRow, percentiles } from './row';

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
  const { p50, p95 } = percentiles(times);
  return [{ name: `${LABELS} labels, each drawn and read three ways`, p50, p95, bound: null }];
}

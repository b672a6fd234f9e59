/** One measured thing. Every bench gives some of these. */
export interface BenchRow {
  name: string;
  /** Milliseconds. */
  p50: number;
  p95: number;
  p99?: number;
  /** What p95, or p99 where `boundOn` says so, must not exceed; `null` where no bound is set. */
  bound: number | null;
  boundOn?: 'p99';
  /** Its time as a share of a reference measured in the same run; `null` or left out where there is none. */
  ratio?: number | null;
  /** What the reference is, in a few words. */
  beside?: string;
}

/** Percentiles of times in milliseconds, each one of the times. */
export function percentiles(times: readonly number[]): { p50: number; p95: number; p99: number } {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
  return { p50: at(0.5), p95: at(0.95), p99: at(0.99) };
}

/** The middle of some times of `work`, after a first that warms up: a reference in the same run, on the same machine. */
export async function besideOf(work: () => unknown, rounds = 15): Promise<number> {
  await work();
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const began = performance.now();
    await work();
    times.push(performance.now() - began);
  }
  return percentiles(times).p50;
}

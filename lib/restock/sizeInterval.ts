export interface SizeInterval {
  /** Smoothed size of a demand, pieces. */
  size: number;
  /** Smoothed interval between demands, periods. */
  interval: number;
  /** Size over interval, pieces a period: too high on average. */
  uncorrected: number;
  /** The same less α/2 of it (Syntetos & Boylan 2005). */
  corrected: number;
}

/**
 * Sparse demand by size and interval apart, each smoothed by `alpha` where a demand comes (Croston 1972). It begins with
 * the first demand and its interval from the start. `null` where there is none.
 */
export function sizeAndInterval(periods: readonly number[], alpha: number): SizeInterval | null {
  let smoothed: { size: number; interval: number } | null = null;
  let since = 0;
  for (const pieces of periods) {
    since += 1;
    if (pieces === 0) continue;
    smoothed =
      smoothed === null
        ? { size: pieces, interval: since }
        : {
            size: smoothed.size + alpha * (pieces - smoothed.size),
            interval: smoothed.interval + alpha * (since - smoothed.interval),
          };
    since = 0;
  }
  if (smoothed === null) return null;
  const uncorrected = smoothed.size / smoothed.interval;
  return { ...smoothed, uncorrected, corrected: (1 - alpha / 2) * uncorrected };
}

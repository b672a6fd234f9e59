import type { Holding, HoldingBand } from './schema';

/** The time between two readings next to each other, with both temperatures; `null` where the log has a gap there. */
export interface Interval {
  from: number;
  to: number;
  seconds: number;
  ends: readonly [number, number] | null;
}

/**
 * The longest stretch in which every reading lies within the band. Time counts only between two readings that both do.
 * `notHeld` is said only where no reading that is lacking could make it long enough.
 */
export function longestHolding(intervals: readonly Interval[], band: HoldingBand): Holding {
  const within = (celsius: number) => celsius >= band.lowC && (band.highC === null || celsius <= band.highC);
  let longest = null as Stretch | null;
  let run = null as Stretch | null;
  let possible = 0;
  let mostPossible = 0;
  for (const { from, to, seconds, ends } of intervals) {
    const inBand = ends?.every(within) ?? false;
    possible = ends === null || inBand ? possible + seconds : 0;
    mostPossible = Math.max(mostPossible, possible);
    if (ends === null || !inBand) {
      run = null;
      continue;
    }
    run = {
      from: run?.from ?? from,
      to,
      lowest: Math.min(run?.lowest ?? Infinity, ...ends),
      highest: Math.max(run?.highest ?? -Infinity, ...ends),
    };
    if (longest === null || run.to - run.from > longest.to - longest.from) longest = run;
  }
  const longestSeconds = Number((longest === null ? 0 : longest.to - longest.from).toFixed(3));
  return {
    outcome:
      longestSeconds >= band.holdSeconds
        ? 'held'
        : mostPossible >= band.holdSeconds
          ? 'notEstablished'
          : 'notHeld',
    longestSeconds,
    requiredSeconds: band.holdSeconds,
    fromSecond: longest?.from ?? null,
    toSecond: longest?.to ?? null,
    lowestC: longest?.lowest ?? null,
    highestC: longest?.highest ?? null,
  };
}

interface Stretch {
  from: number;
  to: number;
  lowest: number;
  highest: number;
}

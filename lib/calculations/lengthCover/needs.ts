import cdf from '@stdlib/stats-base-dists-normal-cdf';
import type { CoverHole, LengthCoverInput } from './schema';

/** Holes of one family that are alike in all that counts: they can be counted instead of told apart. */
export interface HoleGroup {
  size: number;
  need: Exclude<CoverHole['need'], { kind: 'notStated' }>;
  /** Limits of what is measured, per length made: length `k` is needed from `limits[k]` to `limits[k + 1]`. */
  limits: number[];
  /** Per length needed, the first and last length (by index) that will do. */
  windows: { first: number; last: number }[];
}

/** One screw family of the problem: its lengths in ascending order, and its holes. */
export interface FamilyCase {
  family: string;
  lengthsMm: number[];
  groups: HoleGroup[];
}

/** Every stated hole in its family and group. Families that no hole needs are left out. */
export function familyCases(input: LengthCoverInput): FamilyCase[] {
  return input.families.flatMap(({ family, lengths }) => {
    const lengthsMm = lengths.map(({ lengthMm }) => lengthMm).sort((a, b) => a - b);
    const groups = new Map<string, HoleGroup>();
    for (const { family: of, need, rounding, acceptLongerMm, acceptShorterMm } of input.holes) {
      if (of !== family || need.kind === 'notStated') continue;
      const key = JSON.stringify([need, need.kind === 'spread' && rounding, acceptLongerMm, acceptShorterMm]);
      const group = groups.get(key);
      if (group) {
        group.size += 1;
        continue;
      }
      groups.set(key, {
        size: 1,
        need,
        limits: measureLimits(lengthsMm, rounding),
        windows: lengthsMm.map((mm) => ({
          first: lengthsMm.findIndex((other) => other >= mm - acceptShorterMm),
          last: lengthsMm.findLastIndex((other) => other <= mm + acceptLongerMm),
        })),
      });
    }
    return groups.size === 0 ? [] : [{ family, lengthsMm, groups: [...groups.values()] }];
  });
}

/** What is measured becomes the nearest length made, the next longer (`up`) or the next shorter (`down`). */
export function measureLimits(lengthsMm: readonly number[], rounding: CoverHole['rounding']): number[] {
  const last = lengthsMm.length - 1;
  const at = (index: number) => lengthsMm[index] ?? 0;
  // past either end the step is that of the two lengths next to it; what lies further out is beyond range
  const below = at(0) - (at(1) - at(0));
  const above = at(last) + (at(last) - at(last - 1));
  switch (rounding) {
    case 'up':
      return [below, ...lengthsMm];
    case 'down':
      return [...lengthsMm, above];
    case 'nearest':
      return [below, ...lengthsMm].map((mm, index) => (mm + (index > last ? above : at(index))) / 2);
  }
}

/**
 * Chance of each length being the one needed in a hole of this group.
 *
 * @param offsetMm error shared by all holes with a spread
 * @param sharedSdMm when given, the chance over all shared errors instead (`offsetMm` is then 0)
 */
export function lengthChances(
  group: HoleGroup,
  lengthsMm: readonly number[],
  offsetMm: number,
  sharedSdMm = 0,
): number[] {
  const { need } = group;
  switch (need.kind) {
    case 'exact':
      return lengthsMm.map((mm) => (mm === need.lengthMm ? 1 : 0));
    case 'odds':
      return lengthsMm.map((mm) => need.odds.find((odds) => odds.lengthMm === mm)?.chance ?? 0);
    case 'spread': {
      const mean = need.meanMm + offsetMm;
      const sd = Math.hypot(need.sdMm, sharedSdMm);
      const below = group.limits.map((limit) => cdf(limit, mean, sd));
      return lengthsMm.map((_, at) => (below[at + 1] ?? 0) - (below[at] ?? 0));
    }
  }
}

import type { CoverMethod, Stocks } from './exact';
import { type FamilyCase, lengthChances } from './needs';
import type { LengthCoverOutput } from './schema';

/** One length of one family, by index. */
export interface Place {
  family: number;
  length: number;
}

/** Figures closer than this are taken as equal. */
export const SAME = 1e-9;

/** Each length of which one more piece would raise the cover, most first. */
export function limitingLengths(
  families: readonly FamilyCase[],
  stocks: Stocks,
  method: CoverMethod,
  sharedSdMm: number,
): LengthCoverOutput['limitedBy'] {
  const cover = method.cover(stocks) ?? 1;
  return usefulPlaces(families, sharedSdMm)
    .map((place) => ({ place, coverWithOneMore: method.cover(withMore(stocks, place, 1)) ?? 0 }))
    .filter(({ coverWithOneMore }) => coverWithOneMore > cover + SAME)
    .sort((a, b) => b.coverWithOneMore - a.coverWithOneMore)
    .map(({ place, coverWithOneMore }) => ({ ...named(families, place), coverWithOneMore }));
}

/** Lengths that some hole may take with a chance worth counting. */
export function usefulPlaces(families: readonly FamilyCase[], sharedSdMm: number): Place[] {
  return families.flatMap(({ lengthsMm, groups }, family) => {
    const useful = new Set<number>();
    for (const group of groups) {
      for (const [needed, chance] of lengthChances(group, lengthsMm, 0, sharedSdMm).entries()) {
        const window = group.windows[needed];
        if (chance < SAME || !window) continue;
        for (let length = window.first; length <= window.last; length += 1) useful.add(length);
      }
    }
    return [...useful].sort((a, b) => a - b).map((length) => ({ family, length }));
  });
}

/** The stock with more pieces of one length. */
export function withMore(stocks: Stocks, { family, length }: Place, pieces: number): Stocks {
  return stocks.map((stock, at) =>
    at === family ? stock.with(length, (stock[length] ?? 0) + pieces) : stock,
  );
}

export function named(families: readonly FamilyCase[], { family, length }: Place) {
  return { family: families[family]?.family ?? '', lengthMm: families[family]?.lengthsMm[length] ?? 0 };
}

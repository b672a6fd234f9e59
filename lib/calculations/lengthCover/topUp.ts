import type { CoverMethod, Stocks } from './exact';
import { named, type Place, SAME, usefulPlaces, withMore } from './limits';
import { type FamilyCase, lengthChances } from './needs';
import type { LengthCoverOutput } from './schema';
import { holesOf } from './sweep';

/** Multiplications that a search may cost; some tenths of a second. */
const MOST_COST = 3e8;
/** Sums of probabilities are no nearer to the truth than this. */
const ROUNDING = 1e-9;
const MOST_PIECES = 60;

interface Wanted {
  cover: number;
  /** Cover with plenty of everything: what no top-up can exceed. */
  best: number;
  target: number;
  sharedSdMm: number;
  /** So many pieces of each family that more never help. */
  plenty: readonly number[];
}

/**
 * The smallest top-up that brings the joint figure to the target. For each length, the pieces without which the target
 * cannot be reached even with plenty of all others come first; they are in every answer. A greedy top-up is added to
 * them; then every smaller size is searched, leaving out a branch as soon as not even plenty of all lengths still open to
 * it reaches the target, and among the smallest the one with the best cover is kept.
 *
 * Where that would cost too much, what was found stands as not proven, with the size below which there is proven to be none.
 *
 * @param rough a method to look for candidates with where the method itself is dear or proves nothing (simulation); what
 *   is found is always confirmed by `method`, and never called proven
 */
export function smallestTopUp(
  families: readonly FamilyCase[],
  stocks: Stocks,
  method: CoverMethod,
  rough: CoverMethod | null,
  wanted: Wanted,
): LengthCoverOutput['topUp'] {
  const { cover, best, target } = wanted;
  if (cover >= target) return { state: 'reached', target };
  if (best < target) return { state: 'outOfReach', target, best };
  const search = new Search(families, stocks, rough ?? method, wanted);
  const short = families.reduce(
    (sum, family, at) => sum + Math.max(0, holesOf(family) - total(stocks[at] ?? [])),
    0,
  );
  const found = rough ? confirmed(search, stocks, method, target, Math.max(1, short)) : search.smallest();
  if (!found) {
    // the best there could be is the target but for the rounding of sums: no piece brings it nearer
    if (best - target < ROUNDING) return { state: 'outOfReach', target, best };
    return { state: 'notFound', target, triedPieces: MOST_PIECES };
  }
  return {
    state: 'found',
    target,
    pieces: counted(families, found.places),
    total: found.places.length,
    coverAfter: method.cover(withAll(stocks, found.places)) ?? 0,
    proof: found.proven ? 'smallest' : 'notProven',
    atLeast: found.proven ? found.places.length : found.atLeast,
  };
}

/**
 * Where one figure of this method is too dear to search with, the trials of a simulation that looks for candidates
 * instead; the fewer, the more there is to look at.
 */
export function roughTrials(
  families: readonly FamilyCase[],
  stocks: Stocks,
  method: CoverMethod,
  sharedSdMm: number,
): number | null {
  const figures = usefulPlaces(families, sharedSdMm).length * 15;
  if (method.cost(stocks) * figures <= MOST_COST) return null;
  const eachTrial = families.reduce((sum, family) => sum + 30 + 40 * holesOf(family), 0);
  return Math.round(Math.min(4000, Math.max(300, MOST_COST / (figures * eachTrial))));
}

interface Found {
  places: Place[];
  proven: boolean;
  atLeast: number;
}

/** The greedy answer of a rough method, with pieces added until the method itself agrees that the target is reached. */
function confirmed(
  search: Search,
  stocks: Stocks,
  method: CoverMethod,
  target: number,
  atLeast: number,
): Found | null {
  let places = search.greedy([]);
  for (let more = 0; places && more < 4; more += 1) {
    if ((method.cover(withAll(stocks, places)) ?? 0) >= target) return { places, proven: false, atLeast };
    places = [...places, search.bestNext(places).place];
  }
  return null;
}

/** What the next top-up of a size must beat, and the best one found so far. */
interface Rival {
  cover: number;
  extra: Place[] | null;
}

class Search {
  private readonly places: Place[];
  private readonly expected = new Map<string, number>();
  private spent = 0;

  constructor(
    families: readonly FamilyCase[],
    private readonly stocks: Stocks,
    private readonly method: CoverMethod,
    private readonly wanted: Wanted,
  ) {
    this.places = usefulPlaces(families, wanted.sharedSdMm);
    for (const [at, family] of families.entries()) {
      for (const group of family.groups) {
        for (const [length, chance] of lengthChances(
          group,
          family.lengthsMm,
          0,
          wanted.sharedSdMm,
        ).entries()) {
          const key = `${at}:${length}`;
          this.expected.set(key, (this.expected.get(key) ?? 0) + chance * group.size);
        }
      }
    }
  }

  smallest(): Found | null {
    const needed = this.neededOfEach();
    let best = this.greedy(needed);
    if (!best) return null;
    const start = withAll(this.stocks, needed);
    for (let size = needed.length; ; size += 1) {
      // at the size of the answer already there, only a better one of that size is of interest
      const threshold =
        size === best.length ? this.cover(withAll(this.stocks, best)) + SAME : this.wanted.target;
      const record: Rival = { cover: threshold, extra: null };
      const outcome = this.branch(size - needed.length, 0, start, [], record);
      if (record.extra) best = [...needed, ...record.extra];
      if (best.length <= size || outcome === 'tooCostly') {
        return { places: best, proven: best.length <= size, atLeast: size };
      }
    }
  }

  /** One piece at a time where it helps most, on top of `first`; then whatever turns out not to be needed is taken out. */
  greedy(first: readonly Place[]): Place[] | null {
    const added = [...first];
    while (added.length < MOST_PIECES) {
      if (added.length > 0 && this.cover(withAll(this.stocks, added)) >= this.wanted.target)
        return this.pruned(first, added);
      if (this.spent > 2 * MOST_COST) return null;
      added.push(this.bestNext(added).place);
    }
    return null;
  }

  bestNext(added: readonly Place[]): { place: Place; cover: number } {
    const now = withAll(this.stocks, added);
    let top = { place: this.scarcest(now), cover: SAME };
    // while pieces are short in number no single one helps, and the length furthest below its expected need is taken
    for (const place of this.places) {
      const cover = this.cover(withMore(now, place, 1));
      if (cover > top.cover + SAME) top = { place, cover };
    }
    return top;
  }

  private cover(stocks: Stocks): number {
    this.spent += this.method.cost(stocks);
    return this.method.cover(stocks) ?? 0;
  }

  /** Per length, the pieces that no top-up can do without. */
  private neededOfEach(): Place[] {
    const { plenty, target } = this.wanted;
    const ample = this.stocks.map((stock, at) => stock.map((pieces) => Math.max(pieces, plenty[at] ?? 0)));
    return this.places.flatMap((place) => {
      const stock = this.stocks[place.family]?.[place.length] ?? 0;
      let more = 0;
      for (; stock + more < (plenty[place.family] ?? 0) && this.spent <= MOST_COST / 2; more += 1) {
        const row = (ample[place.family] ?? []).with(place.length, stock + more);
        if (this.cover(ample.with(place.family, row)) >= target) break;
      }
      return Array.from({ length: more }, () => place);
    });
  }

  private scarcest(stocks: Stocks): Place {
    const lack = ({ family, length }: Place) =>
      (this.expected.get(`${family}:${length}`) ?? 0) - (stocks[family]?.[length] ?? 0);
    return this.places.reduce(
      (a, b) => (lack(b) > lack(a) ? b : a),
      this.places[0] ?? { family: 0, length: 0 },
    );
  }

  private pruned(first: readonly Place[], added: readonly Place[]): Place[] {
    let kept = [...added];
    for (const place of added.slice(first.length)) {
      const at = kept.lastIndexOf(place);
      const without = kept.toSpliced(at, 1);
      if (this.cover(withAll(this.stocks, without)) >= this.wanted.target) kept = without;
    }
    return kept;
  }

  /** Every way to add exactly so many pieces from the places from `from` on, as far as it can still beat the record. */
  private branch(
    pieces: number,
    from: number,
    stocks: Stocks,
    taken: readonly Place[],
    record: Rival,
  ): 'tooCostly' | 'done' {
    if (this.spent > MOST_COST) return 'tooCostly';
    const place = this.places[from];
    if (pieces === 0 || !place) {
      if (pieces > 0) return 'done';
      const cover = this.cover(stocks);
      if (cover >= record.cover) {
        record.cover = cover + SAME;
        record.extra = [...taken];
      }
      return 'done';
    }
    const ample = this.places.slice(from).reduce((all, open) => withMore(all, open, pieces), stocks);
    if (this.cover(ample) < record.cover) return 'done';
    for (let here = pieces; here >= 0; here -= 1) {
      const chosen = [...taken, ...Array.from({ length: here }, () => place)];
      const outcome = this.branch(pieces - here, from + 1, withMore(stocks, place, here), chosen, record);
      if (outcome === 'tooCostly') return outcome;
    }
    return 'done';
  }
}

function total(stock: readonly number[]): number {
  return stock.reduce((sum, pieces) => sum + pieces, 0);
}

function withAll(stocks: Stocks, places: readonly Place[]): Stocks {
  return places.reduce((all, place) => withMore(all, place, 1), stocks);
}

function counted(families: readonly FamilyCase[], places: readonly Place[]) {
  const counts = new Map<string, { family: string; lengthMm: number; pieces: number }>();
  for (const place of places) {
    const key = `${place.family}:${place.length}`;
    const before = counts.get(key);
    counts.set(key, { ...named(families, place), pieces: (before?.pieces ?? 0) + 1 });
  }
  return [...counts.values()].sort(
    (a, b) => a.family.localeCompare(b.family, 'en') || a.lengthMm - b.lengthMm,
  );
}

import type { CoverProblem, SetCost } from './problem';

/** Sets that the lines can't tell apart: copies of a configuration, but for what is short. */
export interface SetType {
  /** Numbers of the sets, cheapest first. */
  copies: number[];
  /** What one copy holds of what the lines look at, no more than could ever be used. */
  holds: Map<number, number>;
}

/**
 * Brings interchangeable sets together; sets that hold nothing any line looks at are left out. Whatever choice takes a
 * copy is no worse with the cheapest copy left, so only the order inside a type matters.
 */
export function setTypes(problem: CoverProblem): SetType[] {
  const useful = mostUseful(problem);
  const byHoldings = new Map<string, SetType>();
  const known = new Map<CoverProblem['sets'][number]['holds'], SetType | null>();
  const typeOf = (holds: CoverProblem['sets'][number]['holds']): SetType | null => {
    const relevant = [...holds]
      .map(([item, count]): [number, number] => [item, Math.min(count, useful.get(item) ?? 0)])
      .filter(([, count]) => count > 0)
      .sort((a, b) => a[0] - b[0]);
    if (relevant.length === 0) return null;
    const key = relevant.join(';');
    const type = byHoldings.get(key) ?? { copies: [], holds: new Map(relevant) };
    byHoldings.set(key, type);
    return type;
  };
  problem.sets.forEach(({ holds }, number) => {
    let type = known.get(holds);
    if (type === undefined) {
      type = typeOf(holds);
      known.set(holds, type);
    }
    type?.copies.push(number);
  });
  const types = [...byHoldings.values()];
  const costOf = (number: number) => (problem.sets[number] as CoverProblem['sets'][number]).cost;
  for (const type of types) type.copies.sort((a, b) => compareSetCosts(costOf(a), costOf(b)) || a - b);
  return types;
}

/** By promises, then use-by, then mass, then distance: the order of the aims that concern one set. */
export function compareSetCosts(a: SetCost, b: SetCost): number {
  return (
    a.promises - b.promises || a.useByDays - b.useByDays || a.massGrams - b.massGrams || a.metres - b.metres
  );
}

/** How many pieces of each item could ever be used at once. */
export function mostUseful(problem: Pick<CoverProblem, 'chains' | 'pieces'>): Map<number, number> {
  const useful = new Map<number, number>();
  for (const { slots } of problem.chains) {
    for (const { candidates, pieces } of slots) {
      for (const item of candidates) if (item >= 0) useful.set(item, Math.max(useful.get(item) ?? 0, pieces));
    }
  }
  const accepting = new Map<number, number>();
  for (const { accepts } of problem.pieces) {
    for (const { item } of accepts) accepting.set(item, (accepting.get(item) ?? 0) + 1);
  }
  for (const [item, count] of accepting) useful.set(item, Math.max(useful.get(item) ?? 0, count));
  return useful;
}

/** How many copies of a kind can add anything: with so many of them there is of each item as much as could ever be used. */
export const mostCopies = (holds: SetType['holds'], most: ReadonlyMap<number, number>): number =>
  Math.max(0, ...[...holds].map(([item, count]) => Math.ceil((most.get(item) ?? 0) / count)));

/**
 * The same problem with no more of anything than could ever be used: what is beyond that changes no answer, and a piece more
 * or less of it is no other problem.
 */
export function upToUse(problem: CoverProblem): CoverProblem {
  const useful = mostUseful(problem);
  const most = (item: number, count: number) => Math.min(count, useful.get(item) ?? 0);
  const known = new Map<Map<number, number>, Map<number, number>>();
  const upTo = (holds: Map<number, number>) => {
    const before = known.get(holds);
    if (before) return before;
    const used = new Map(
      [...holds].map(([item, count]) => [item, most(item, count)] as const).filter(([, count]) => count > 0),
    );
    known.set(holds, used);
    return used;
  };
  return {
    ...problem,
    sets: problem.sets.map((set) => ({ ...set, holds: upTo(set.holds) })),
    packs: problem.packs.map((pack) => ({ ...pack, quantity: most(pack.item, pack.quantity) })),
  };
}

/**
 * The types without those that another one always serves for: it holds all that they hold, and none of it is ever
 * wanted twice (a second bit, a screw of a length), so that beside the better one they add nothing.
 */
export function undominated(problem: CoverProblem, types: SetType[]): SetType[] {
  const wantedOften = new Set(problem.pieces.flatMap(({ accepts }) => accepts.map(({ item }) => item)));
  for (const { slots } of problem.chains) {
    for (const { candidates, pieces } of slots)
      if (pieces > 1) for (const item of candidates) wantedOften.add(item);
  }
  const serves = (better: SetType, worse: SetType) =>
    better.holds.size >= worse.holds.size &&
    [...worse.holds].every(([item, count]) => (better.holds.get(item) ?? 0) >= count);
  const plain = types.map(({ holds }) => ![...holds.keys()].some((item) => wantedOften.has(item)));
  return types.filter(
    (worse, at) => !plain[at] || !types.some((better) => better !== worse && serves(better, worse)),
  );
}

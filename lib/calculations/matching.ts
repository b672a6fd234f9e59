/**
 * Maximum bipartite matching between needs and kinds of piece, where a kind has as many pieces as its stock.
 * Augmenting paths (Kuhn): exact.
 *
 * @param accepted per need, the indexes of the kinds it accepts
 * @param stock    pieces of each kind
 * @returns per need the kind it gets, or `null`
 */
export function largestMatching(
  accepted: readonly (readonly number[])[],
  stock: readonly number[],
): (number | null)[] {
  const holders: number[][] = stock.map(() => []);
  const given: (number | null)[] = accepted.map(() => null);

  function seat(need: number, tried: Set<number>): boolean {
    for (const kind of accepted[need] ?? []) {
      if (tried.has(kind)) continue;
      tried.add(kind);
      const holding = holders[kind];
      if (!holding) continue;
      if (holding.length < (stock[kind] ?? 0)) {
        holding.push(need);
        given[need] = kind;
        return true;
      }
      for (const [place, other] of holding.entries()) {
        if (!seat(other, tried)) continue;
        // `other` has moved to another kind, and its old place here is free
        holding[place] = need;
        given[need] = kind;
        return true;
      }
    }
    return false;
  }

  for (let need = 0; need < accepted.length; need += 1) seat(need, new Set());
  return given;
}

/** How many needs a matching meets. */
export function matchedCount(given: readonly (number | null)[]): number {
  return given.filter((kind) => kind !== null).length;
}

/**
 * A smallest group of needs that together accept fewer pieces than they are: the reason why a matching fails (Hall's
 * theorem). No need can be taken out of the group without losing the reason. `null` when every need is met.
 */
export function hallViolator(
  accepted: readonly (readonly number[])[],
  stock: readonly number[],
  given: readonly (number | null)[],
): { needs: number[]; kinds: number[] } | null {
  const unmet = given.indexOf(null);
  if (unmet === -1) return null;
  let needs = [...reachableFrom(unmet, accepted, given)].sort((a, b) => a - b);
  for (const need of [...needs]) {
    const without = needs.filter((other) => other !== need);
    if (without.length > 0 && isTooMany(without, accepted, stock)) needs = without;
  }
  return { needs, kinds: kindsOf(needs, accepted) };
}

/** Needs on alternating paths from an unmet one: each of their kinds is used up by needs of this same group. */
function reachableFrom(
  start: number,
  accepted: readonly (readonly number[])[],
  given: readonly (number | null)[],
) {
  const group = new Set([start]);
  for (const need of group) {
    for (const kind of accepted[need] ?? []) {
      for (const [other, held] of given.entries()) if (held === kind) group.add(other);
    }
  }
  return group;
}

function isTooMany(
  needs: readonly number[],
  accepted: readonly (readonly number[])[],
  stock: readonly number[],
) {
  const pieces = kindsOf(needs, accepted).reduce((sum, kind) => sum + (stock[kind] ?? 0), 0);
  return pieces < needs.length;
}

function kindsOf(needs: readonly number[], accepted: readonly (readonly number[])[]): number[] {
  return [...new Set(needs.flatMap((need) => accepted[need] ?? []))].sort((a, b) => a - b);
}

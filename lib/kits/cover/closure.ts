import { type AtHand, type CoverChain, NOTHING } from './problem';

/** Slots of a chain in an order where every slot but the first is linked to an earlier one. */
interface Walk {
  slot: number;
  parent: number;
  /** For each candidate of the slot, the parent's candidates it goes with. */
  partners: number[][];
}

const walks = new WeakMap<CoverChain, Walk[]>();

function walkOf(chain: CoverChain): Walk[] {
  const known = walks.get(chain);
  if (known) return known;
  const reached = new Set<number>();
  const walk: Walk[] = [];
  for (let root = 0; root < chain.slots.length; root += 1) {
    if (reached.has(root)) continue;
    reached.add(root);
    walk.push({ slot: root, parent: -1, partners: [] });
    for (let at = walk.length - 1; at < walk.length; at += 1) {
      const { slot } = walk[at] as Walk;
      for (const link of chain.links) {
        const outward = link.first === slot ? 0 : link.second === slot ? 1 : -1;
        if (outward === -1) continue;
        const next = outward === 0 ? link.second : link.first;
        if (reached.has(next)) continue;
        reached.add(next);
        const partners: number[][] = (chain.slots[next]?.candidates ?? []).map(() => []);
        for (const pair of link.pairs) partners[pair[outward === 0 ? 1 : 0]]?.push(pair[outward]);
        walk.push({ slot: next, parent: slot, partners });
      }
    }
  }
  walks.set(chain, walk);
  return walk;
}

/**
 * For each slot the candidates that take part in some whole chain of what is at hand, or `null` when there is none.
 * Exact because slots and links form a tree.
 */
export function closedBy(chain: CoverChain, atHand: AtHand): boolean[][] | null {
  const walk = walkOf(chain);
  const alive = chain.slots.map(({ candidates, pieces }) =>
    candidates.map((item) => item === NOTHING || (atHand[item] ?? 0) >= pieces),
  );
  // towards the root: a parent's candidate needs a living partner in every child
  for (let at = walk.length - 1; at >= 0; at -= 1) {
    const { slot, parent, partners } = walk[at] as Walk;
    const mine = alive[slot] as boolean[];
    if (parent === -1) {
      if (!mine.includes(true)) return null;
      continue;
    }
    const theirs = alive[parent] as boolean[];
    const held = theirs.map(() => false);
    partners.forEach((list, candidate) => {
      if (mine[candidate]) for (const partner of list) held[partner] = true;
    });
    for (let i = 0; i < theirs.length; i += 1) theirs[i] = (theirs[i] && held[i]) as boolean;
  }
  // and back: a child's candidate needs a living partner in its parent
  for (const { slot, parent, partners } of walk) {
    if (parent === -1) continue;
    const mine = alive[slot] as boolean[];
    const theirs = alive[parent] as boolean[];
    for (let i = 0; i < mine.length; i += 1)
      mine[i] = mine[i] === true && (partners[i] ?? []).some((one) => theirs[one]);
  }
  return alive;
}

export function isClosed(chain: CoverChain, atHand: AtHand): boolean {
  return closedBy(chain, atHand) !== null;
}

/**
 * Every smallest way to close a chain with what could be added: for each, how many pieces of which item are missing
 * at hand. Ways that need more than another are dropped. `limit` bounds how many are looked at.
 *
 * @param available pieces that could be added, by item
 */
export function waysToClose(
  chain: CoverChain,
  atHand: AtHand,
  available: AtHand,
  limit = 20_000,
): Map<number, number>[] {
  const walk = walkOf(chain);
  const could = atHand.map((count, item) => count + (available[item] ?? 0));
  const alive = closedBy(chain, could);
  if (!alive) return [];
  const found = new Map<string, Map<number, number>>();
  const chosen = chain.slots.map(() => -1);
  let looked = 0;

  const go = (at: number, missing: Map<number, number>): void => {
    if (looked >= limit) return;
    if (at === walk.length) {
      looked += 1;
      const key = [...missing].sort((a, b) => a[0] - b[0]).join(';');
      if (!found.has(key)) found.set(key, missing);
      return;
    }
    const { slot, parent, partners } = walk[at] as Walk;
    const { candidates, pieces } = chain.slots[slot] as CoverChain['slots'][number];
    const settled = new Set<number>();
    candidates.forEach((item, candidate) => {
      if (!alive[slot]?.[candidate]) return;
      if (parent !== -1 && !partners[candidate]?.includes(chosen[parent] as number)) return;
      const lacking = item === NOTHING ? 0 : Math.max(0, pieces - (atHand[item] ?? 0));
      // a leaf that is at hand settles the slot for all: nothing further needs adding there
      const leaf = !walk.some((later) => later.parent === slot);
      if (leaf && settled.has(lacking === 0 ? 0 : item + 1)) return;
      settled.add(lacking === 0 ? 0 : item + 1);
      chosen[slot] = candidate;
      const next =
        lacking === 0 ? missing : new Map(missing).set(item, Math.max(lacking, missing.get(item) ?? 0));
      go(at + 1, next);
    });
  };
  go(0, new Map());
  return smallest([...found.values()]);
}

/** Drops every way that asks for all that another asks for, and more. */
export function smallest(ways: Map<number, number>[]): Map<number, number>[] {
  // fewest pieces first: a way can only ask for more than one that comes before it
  const sorted = [...ways].sort((a, b) => piecesOf(a) - piecesOf(b) || a.size - b.size);
  const kept: Map<number, number>[] = [];
  for (const way of sorted) {
    const more = kept.some((other) => [...other].every(([item, count]) => (way.get(item) ?? 0) >= count));
    if (!more) kept.push(way);
  }
  return kept;
}

const piecesOf = (way: Map<number, number>): number =>
  [...way.values()].reduce((sum, count) => sum + count, 0);

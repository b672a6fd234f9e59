import type { Item } from '../catalogue/item';
import type { ItemId, SetId } from '../identity/ids';
import type { Store, StoredSet } from '../kits/store';
import type { ConfigurationLine, ConfigurationVersion, MustHaveClass } from '../sets/configuration';
import type { HeldLine } from '../sets/holdings';

/** A set that would follow another version, with the lines it follows now as they are counted. */
export interface Follower {
  id: SetId;
  code: string;
  follows: number;
  lines: readonly HeldLine[];
}

interface Count {
  itemId: ItemId;
  pieces: number;
}

/** What one set would lack and have over by a version, by what was counted in it. Lines nobody counted count as nothing. */
export function lacksAndOver(
  lines: readonly HeldLine[],
  version: Pick<ConfigurationVersion, 'lines'>,
): { lacks: Count[]; over: Count[]; notCounted: number } {
  const [held, wanted] = [heapsOf(lines, ({ found }) => found ?? 0), expectedOf(version.lines)];
  const ids = [...new Set([...wanted.keys(), ...held.keys()])];
  const differ = (sign: 1 | -1) =>
    ids.flatMap((itemId) => {
      const pieces = sign * ((wanted.get(itemId) ?? 0) - (held.get(itemId) ?? 0));
      return pieces > 0 ? [{ itemId, pieces }] : [];
    });
  return {
    lacks: differ(1),
    over: differ(-1),
    notCounted: lines.filter(({ found }) => found === null).length,
  };
}

/**
 * The store as it would be once every one of these sets were refitted: what the version adds is put in, what it takes out
 * is taken out, and a shortage counted now stays the shortage it is. So a trial shows what the version does, and nothing else.
 */
export function refittedStore(
  store: Store,
  followers: ReadonlyMap<SetId, Follower>,
  version: Pick<ConfigurationVersion, 'lines'>,
  items: ReadonlyMap<ItemId, Item>,
): Store {
  const wanted = expectedOf(version.lines);
  const classes = new Map<ItemId, MustHaveClass>();
  for (const { itemId, mustHaveClass } of version.lines)
    classes.set(itemId, Math.min(classes.get(itemId) ?? 4, mustHaveClass) as MustHaveClass);
  return {
    ...store,
    sets: store.sets.map((set): StoredSet => {
      const follower = followers.get(set.id);
      if (!follower) return set;
      const expected = expectedOf(follower.lines);
      const found = new Map(set.contents.map((line) => [line.itemId, line.found]));
      const contents = [...wanted].map(([itemId, pieces]) => {
        const [before, there] = [expected.get(itemId) ?? 0, found.get(itemId) ?? 0];
        const now = pieces > before ? there + pieces - before : Math.min(there, pieces);
        return { itemId, found: now, expected: pieces, mustHaveClass: classes.get(itemId) ?? 4 };
      });
      return { ...set, contents, massGrams: massAfter(set, contents, items) };
    }),
  };
}

/** The mass now, with the pieces that come and go; unknown where one of theirs is. */
function massAfter(
  set: StoredSet,
  contents: StoredSet['contents'],
  items: ReadonlyMap<ItemId, Item>,
): number | null {
  let grams = set.massGrams;
  const after = new Map(contents.map((line) => [line.itemId, line.found]));
  const before = new Map(set.contents.map((line) => [line.itemId, line.found]));
  for (const itemId of new Set([...before.keys(), ...after.keys()])) {
    const pieces = (after.get(itemId) ?? 0) - (before.get(itemId) ?? 0);
    if (pieces === 0 || grams === null) continue;
    const mass = items.get(itemId)?.massGrams ?? null;
    grams = mass === null ? null : grams + pieces * mass;
  }
  return grams;
}

const expectedOf = (lines: readonly ConfigurationLine[]) => heapsOf(lines, ({ expected }) => expected);

function heapsOf<L extends { itemId: ItemId }>(
  lines: readonly L[],
  pieces: (line: L) => number,
): Map<ItemId, number> {
  const heaps = new Map<ItemId, number>();
  for (const line of lines) heaps.set(line.itemId, (heaps.get(line.itemId) ?? 0) + pieces(line));
  return heaps;
}

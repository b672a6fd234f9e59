import type { ConfigurationId, ItemId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { type Pieces, presentPieces } from '@/lib/sets/buildable';
import type { HeldLine } from '@/lib/sets/holdings';
import type { SetOnFile } from './sets';
import type { SinglePack } from './singlePacks';

interface Store {
  sets: readonly SetOnFile[];
  packs: readonly SinglePack[];
  /** Whether a set may serve a case at all. */
  serves: (set: SetOnFile, forCase: string) => boolean;
  /** Of a set with a decision, `serves` differs from case to case. */
  hasDecision: (set: SetOnFile) => boolean;
}

type Heap = Map<ItemId, number>;

/** What can be fetched on a day: of all kinds of set, and of each. */
interface Fetchable {
  all: Heap;
  byKind: Map<ConfigurationId, Heap>;
}

/**
 * What else will be there for a case beside one of its sets: the others promised to it, and whatever of other kinds can be
 * fetched that day; nothing that is out of service, and nothing that goes short for another case. What can be fetched is
 * added up once a day of cases, not once a case: there are thousands of sets.
 */
export function whatLiesBeside(
  store: Store,
): (set: SetOnFile, forCase: string, caseDate: PlainDate) => Pieces[] {
  const { sets, packs, serves, hasDecision } = store;
  const promisedTo = new Map<string, SetOnFile[]>();
  for (const set of sets)
    for (const promise of set.promisedTo) {
      const promised = promisedTo.get(promise.caseId) ?? [];
      promised.push(set);
      promisedTo.set(promise.caseId, promised);
    }
  const decided = sets.filter((set) => hasDecision(set));
  const withSets = packs.filter(({ with: sent }) => sent.length > 0);
  const byId = new Map<string, SetOnFile>(sets.map((set) => [set.id, set]));
  const days = new Map<PlainDate, Fetchable>();
  const fetchable = (on: PlainDate): Fetchable => {
    const known =
      days.get(on) ??
      addedUp(sets.filter((set) => !hasDecision(set) && !set.outOfService && canBeFetched(set, on)));
    days.set(on, known);
    return known;
  };
  return (set, forCase, caseDate) => {
    const promised = promisedTo.get(forCase) ?? [];
    const kinds = new Set<ConfigurationId>(promised.map((one) => one.configuration.id));
    const isThere = (one: SetOnFile) =>
      one.id !== set.id &&
      serves(one, forCase) &&
      (promised.includes(one) || (!kinds.has(one.configuration.id) && canBeFetched(one, caseDate)));
    const { all, byKind } = fetchable(caseDate);
    const found: Heap = new Map(all);
    for (const kind of kinds) for (const [id, pieces] of byKind.get(kind) ?? []) add(found, id, -pieces);
    for (const one of new Set([...promised, ...decided]))
      if (isThere(one)) for (const piece of presentPieces(one.lines)) add(found, piece.itemId, piece.found);
    for (const { itemId, with: sent } of withSets)
      for (const id of sent) {
        const one = byId.get(id);
        if (one && isThere(one)) add(found, itemId, 1);
      }
    return [...found].map(([itemId, pieces]) => ({ itemId, found: pieces }));
  };
}

const add = (heap: Heap, id: ItemId, pieces: number) => heap.set(id, (heap.get(id) ?? 0) + pieces);

function canBeFetched({ step, useBy, promisedTo }: SetOnFile, on: PlainDate): boolean {
  return step === 'inSterileStore' && promisedTo.length === 0 && (useBy === null || useBy >= on);
}

function addedUp(sets: readonly SetOnFile[]): Fetchable {
  const all: Heap = new Map();
  const byKind = new Map<ConfigurationId, Heap>();
  for (const [kind, own] of groupBy(sets, ({ configuration }) => configuration.id)) {
    const heap: Heap = new Map();
    // sets that hold the same have the same lines
    const alike = new Map<readonly HeldLine[], number>();
    for (const { lines } of own) alike.set(lines, (alike.get(lines) ?? 0) + 1);
    for (const [lines, times] of alike)
      for (const { itemId, found } of presentPieces(lines)) add(heap, itemId, found * times);
    for (const [id, pieces] of heap) add(all, id, pieces);
    byKind.set(kind, heap);
  }
  return { all, byKind };
}

import { isPastUseBy, type PlainDate } from '../quantities/plainDate';
import { availablePacks } from './availability';
import type { SetCost } from './cover/problem';
import { compareSetCosts } from './cover/types';
import { setCost } from './coverOfStore';
import { type HeldBy, heldByItem } from './heldBy';
import type { KitSettings } from './settings';
import type { Store, StoredPack, StoredSet } from './store';

/** What of a store can be there on a day to come, the same for every plan of that day. */
export interface SetsToCome {
  /** The sets that come round, as if they stood in the store, and what each costs. */
  sets: readonly StoredSet[];
  costs: readonly SetCost[];
  /** By set: its place among all from the cheapest on. */
  rank: Int32Array;
  /** Sets that share one list of what lies in them: one of them, and the numbers of all. */
  alike: readonly { like: StoredSet; members: number[] }[];
  /** By item, where it lies, by the places in `alike`. */
  heldBy: HeldBy;
  packs: StoredPack[];
}

const kept = new WeakMap<Store, Map<string, SetsToCome>>();

/** Looked through once for a store and a day, whatever number of plans are asked about; the store must not be changed. */
export function setsToCome(store: Store, caseDate: PlainDate, settings: KitSettings): SetsToCome {
  const days = kept.get(store) ?? new Map<string, SetsToCome>();
  kept.set(store, days);
  const key = `${caseDate} ${JSON.stringify(settings)}`;
  const known = days.get(key);
  if (known) return known;
  const sets = store.sets.filter((set) => comesRound(set, caseDate)).map(wherever);
  const costs = sets.map((set) => setCost(set, caseDate, settings));
  const order = sets.map((_, set) => set);
  order.sort((a, b) => compareSetCosts(costs[a] as SetCost, costs[b] as SetCost) || a - b);
  const rank = new Int32Array(sets.length);
  order.forEach((set, place) => {
    rank[set] = place;
  });
  const alike = new Map<StoredSet['contents'], { like: StoredSet; members: number[] }>();
  sets.forEach((set, number) => {
    const same = alike.get(set.contents);
    if (same) same.members.push(number);
    else alike.set(set.contents, { like: set, members: [number] });
  });
  const made: SetsToCome = {
    sets,
    costs,
    rank,
    alike: [...alike.values()],
    heldBy: heldByItem([...alike.values()].map(({ like }) => like)),
    packs: availablePacks(store, caseDate).packs,
  };
  days.set(key, made);
  return made;
}

/**
 * The set as if it stood in the store, promised to nobody: where it is now, to whom it is promised and how long it keeps change
 * by the hour, and are weighed when sets are given to cases, not in what could serve at all.
 */
const wherever = (set: StoredSet): StoredSet => ({
  ...set,
  step: 'inSterileStore',
  promisedTo: [],
  useBy: null,
});

/** Whether a set can be in the store on a day to come, as far as anybody knows now. */
function comesRound(set: StoredSet, caseDate: PlainDate): boolean {
  if (set.heldBecause !== null || set.step === 'held' || set.shortFor || set.letOutFor) return false;
  return !(set.step === 'inSterileStore' && set.useBy !== null && isPastUseBy(set.useBy, caseDate));
}

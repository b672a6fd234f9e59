import { isPastUseBy, type PlainDate } from '../quantities/plainDate';
import type { Unavailable } from './kit';
import type { Store, StoredPack, StoredSet } from './store';

/** What of the store can be had for a case, and what can't, with the reason. */
export interface Availability {
  sets: StoredSet[];
  packs: StoredPack[];
  otherSets: { set: StoredSet; because: Unavailable }[];
  otherPacks: { pack: StoredPack; because: Unavailable }[];
}

/**
 * Splits the store by what can be opened for a case on `caseDate`. Use-by is tested against the case date. A set that
 * is on its way back is not available; its `readyAt` is kept.
 */
export function availableFor(store: Store, caseDate: PlainDate): Availability {
  const split: Pick<Availability, 'sets' | 'otherSets'> = { sets: [], otherSets: [] };
  for (const set of store.sets) {
    const because = whyNotSet(set, caseDate);
    if (because) split.otherSets.push({ set, because });
    else split.sets.push(set);
  }
  return { ...split, ...availablePacks(store, caseDate) };
}

/** The same of pouches and packs alone. */
export function availablePacks(
  store: Pick<Store, 'packs'>,
  caseDate: PlainDate,
): Pick<Availability, 'packs' | 'otherPacks'> {
  const split: Pick<Availability, 'packs' | 'otherPacks'> = { packs: [], otherPacks: [] };
  for (const pack of store.packs) {
    if (pack.quantity <= 0) continue;
    const because = whyNotPack(pack, caseDate);
    if (because) split.otherPacks.push({ pack, because });
    else split.packs.push(pack);
  }
  return split;
}

function whyNotSet(set: StoredSet, caseDate: PlainDate): Unavailable | null {
  if (set.heldBecause !== null || set.step === 'held')
    return { kind: 'held', reason: set.heldBecause ?? 'held' };
  if (set.onKitOf !== undefined) return { kind: 'onOtherKit', reference: set.onKitOf };
  if (set.letOutFor) return { kind: 'letOutForOneCase', reference: set.letOutFor.reference };
  if (set.shortFor) return { kind: 'shortForOneCase', reference: set.shortFor.reference };
  if (set.step !== 'inSterileStore') return { kind: 'notInStore', step: set.step, readyAt: set.readyAt };
  if (set.useBy !== null && isPastUseBy(set.useBy, caseDate)) return { kind: 'pastUseBy', useBy: set.useBy };
  return null;
}

function whyNotPack(pack: StoredPack, caseDate: PlainDate): Unavailable | null {
  if (pack.heldBecause !== null) return { kind: 'held', reason: pack.heldBecause };
  if (pack.letOutFor) return { kind: 'letOutForOneCase', reference: pack.letOutFor.reference };
  if (pack.useBy !== null && isPastUseBy(pack.useBy, caseDate))
    return { kind: 'pastUseBy', useBy: pack.useBy };
  return null;
}

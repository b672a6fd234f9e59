import type { Item } from '../catalogue/item';
import type { ItemId, SetId } from '../identity/ids';
import type { Needs } from '../kits/need';
import type { Construct } from '../plans/plan';
import type { PlainDate } from '../quantities/plainDate';

/** A case that is over and that a set of the configuration was in. */
export interface PastCase {
  caseId: string;
  reference: string;
  on: PlainDate;
  /** The sets of the configuration that were in it; mostly one. */
  setIds: readonly SetId[];
  /** Pieces implanted or wasted, from these sets and from single packs; `null`: nobody recorded what was used. */
  used: ReadonlyMap<ItemId, number> | null;
  /** Those of them that came in single packs. */
  fromPacks: ReadonlyMap<ItemId, number>;
  /** Sets of which a piece was used. */
  usedSets: ReadonlySet<SetId>;
  /** What its confirmed plan stated; `null` where none was confirmed. */
  construct: Construct | null;
  /** Every item that could serve that plan. */
  couldServe: ReadonlySet<ItemId> | null;
}

/**
 * How the use of an item is known: implants and what is used once are recorded one by one; an instrument counts where the confirmed
 * plan of a case could be served by it; of the rest nobody knows.
 */
export type Evidence = 'recorded' | 'planned' | 'none';

const PLANNED: ReadonlySet<Item['kind']> = new Set([
  'drillBit',
  'drillSleeve',
  'tap',
  'countersink',
  'depthGauge',
  'driver',
  'handle',
  'torqueLimiter',
  'guideWire',
]);
const IMPLANTS: ReadonlySet<Item['kind']> = new Set(['plate', 'screw', 'washer']);

export function evidenceOf({ kind, use }: Pick<Item, 'kind' | 'use'>): Evidence {
  if (IMPLANTS.has(kind) || use === 'singleUse') return 'recorded';
  return PLANNED.has(kind) ? 'planned' : 'none';
}

/** Pieces of an item a case asked for; `null` where that is not known of this case. */
export function askedFor(
  { used, couldServe }: Pick<PastCase, 'used' | 'couldServe'>,
  itemId: ItemId,
  evidence: Evidence,
): number | null {
  switch (evidence) {
    case 'recorded':
      return used === null ? null : (used.get(itemId) ?? 0);
    case 'planned':
      return couldServe === null ? null : couldServe.has(itemId) ? 1 : 0;
    case 'none':
      return null;
  }
}

/** Every item of the chains a plan could be served by, established or not. */
export function servingItems({ chains }: Pick<Needs, 'chains'>): Set<ItemId> {
  const items = new Set<ItemId>();
  for (const { slots } of chains)
    for (const { candidates } of slots)
      for (const { itemId } of candidates) if (itemId !== null) items.add(itemId);
  return items;
}

import { exactUm } from '../plans/lengths';
import type { Construct, HoleFill, PlannedLength, ScrewFill } from '../plans/plan';
import { compareNatural } from '../plans/planFinding';
import type { UsedPiece } from './state';

/** What is to be known of an item to hold it against a plan. */
export interface UsedItem {
  itemId: string;
  kind: string;
  /** Of a screw; `null` of anything else. */
  screwFamily: string | null;
  /** Overall length of a screw; `null`: not stated. */
  lengthUm: number | null;
}

export type AtPlace =
  | { kind: 'plate'; plate: string }
  | { kind: 'hole'; plate: string; hole: string }
  | { kind: 'free'; screw: string };

/**
 * Where what was used differs from what was planned. It is shown and stops nothing: what is opened is decided at the table.
 * `lengthNotEstablished`: the plan or the catalogue states no length, so nothing is said of it.
 */
export type PlanDifference =
  | { kind: 'plateNotUsed'; at: AtPlace; plannedItemId: string }
  | { kind: 'otherPlate'; at: AtPlace; plannedItemId: string; itemId: string; entryId: string }
  | { kind: 'plannedNotFilled'; at: AtPlace; fill: ScrewFill | null }
  | { kind: 'otherLength'; at: AtPlace; planned: PlannedLength; lengthUm: number; entryId: string }
  | { kind: 'lengthNotEstablished'; at: AtPlace; entryId: string }
  | { kind: 'otherItem'; at: AtPlace; screwFamily: string; itemId: string; entryId: string }
  | {
      kind: 'extraScrew';
      at: AtPlace;
      itemId: string;
      entryId: string;
      planned: 'empty' | 'wire' | 'undecided';
    }
  | { kind: 'severalHere'; at: AtPlace; entryIds: string[] }
  | { kind: 'noPlace'; itemId: string; quantity: number; entryId: string };

/** A spread tells no one length: beyond this many of its standard deviations from its mean it is worth a look. */
const SPREADS = 2;

/**
 * Everything that differs, plate by plate in the plan's order, then free screws, then what has no place in the plan.
 *
 * @param pieces those that stand; only what is implanted is held against the plan
 */
export function planDifferences(
  construct: Construct,
  pieces: readonly UsedPiece[],
  itemOf: (itemId: string) => UsedItem | null,
): PlanDifference[] {
  const implanted = pieces.filter(({ outcome }) => outcome === 'implanted');
  const found: PlanDifference[] = [];
  for (const plate of construct.plates) {
    const at: AtPlace = { kind: 'plate', plate: plate.key };
    const own = implanted.filter(({ place }) => place?.kind === 'plate' && place.plate === plate.key);
    if (own.length === 0) found.push({ kind: 'plateNotUsed', at, plannedItemId: plate.plateItemId });
    if (own.length > 1) found.push({ kind: 'severalHere', at, entryIds: own.map(({ entryId }) => entryId) });
    for (const { itemId, entryId } of own)
      if (itemId !== plate.plateItemId)
        found.push({ kind: 'otherPlate', at, plannedItemId: plate.plateItemId, itemId, entryId });
    const used = implanted.flatMap(({ place }) =>
      place?.kind === 'hole' && place.plate === plate.key ? [place.hole] : [],
    );
    const holes = [...new Set([...Object.keys(plate.fills), ...used])].sort(compareNatural);
    for (const hole of holes) {
      const there = implanted.filter(
        ({ place }) => place?.kind === 'hole' && place.plate === plate.key && place.hole === hole,
      );
      found.push(...atHole({ kind: 'hole', plate: plate.key, hole }, plate.fills[hole], there, itemOf));
    }
  }
  for (const screw of construct.freeScrews) {
    const there = implanted.filter(({ place }) => place?.kind === 'free' && place.screw === screw.key);
    found.push(...atHole({ kind: 'free', screw: screw.key }, { purpose: 'lag', ...screw }, there, itemOf));
  }
  for (const { place, itemId, quantity, entryId } of implanted)
    if (place === null) found.push({ kind: 'noPlace', itemId, quantity, entryId });
  return found;
}

function atHole(
  at: AtPlace,
  fill: HoleFill | undefined,
  there: readonly UsedPiece[],
  itemOf: (itemId: string) => UsedItem | null,
): PlanDifference[] {
  const found: PlanDifference[] = [];
  if (there.length > 1)
    found.push({ kind: 'severalHere', at, entryIds: there.map(({ entryId }) => entryId) });
  if (fill === undefined || fill.purpose === 'empty' || fill.purpose === 'temporaryWire') {
    const planned = fill === undefined ? 'undecided' : fill.purpose === 'empty' ? 'empty' : 'wire';
    for (const { itemId, entryId } of there) found.push({ kind: 'extraScrew', at, itemId, entryId, planned });
    return found;
  }
  if (there.length === 0) return [{ kind: 'plannedNotFilled', at, fill }];
  for (const { itemId, entryId } of there) {
    const item = itemOf(itemId);
    if (item?.screwFamily !== fill.screwFamily) {
      found.push({ kind: 'otherItem', at, screwFamily: fill.screwFamily, itemId, entryId });
      continue;
    }
    const asPlanned = lengthAsPlanned(fill, item.lengthUm);
    if (asPlanned === null) found.push({ kind: 'lengthNotEstablished', at, entryId });
    else if (!asPlanned)
      found.push({ kind: 'otherLength', at, planned: fill.length, lengthUm: item.lengthUm ?? 0, entryId });
  }
  return found;
}

/** Whether a length is what was planned; `null` where the plan or the catalogue does not say one. */
export function lengthAsPlanned(
  { length, acceptLongerMm }: Pick<ScrewFill, 'length' | 'acceptLongerMm'>,
  lengthUm: number | null,
): boolean | null {
  if (lengthUm === null || length.kind === 'notStated') return null;
  if (length.kind === 'exact') {
    const wantedUm = exactUm(length.mm);
    return lengthUm >= wantedUm && lengthUm <= wantedUm + acceptLongerMm * 1000;
  }
  return Math.abs(lengthUm - exactUm(length.meanMm)) <= SPREADS * exactUm(length.sdMm);
}

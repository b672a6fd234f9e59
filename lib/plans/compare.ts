import type { Construct, FreeScrew, HoleFill, PlannedPlate } from './plan';
import { compareNatural } from './planFinding';

/** One thing that differs between two constructs, with both values as they were. */
export type PlanChange =
  | { kind: 'region'; before: Construct['region']; after: Construct['region'] }
  | { kind: 'limb'; before: Construct['limb']; after: Construct['limb'] }
  | { kind: 'bone'; before: Construct['bone']; after: Construct['bone'] }
  | { kind: 'sharedSpread'; before: number | null; after: number | null }
  | { kind: 'note'; before: string | null; after: string | null }
  | { kind: 'plateAdded'; plateKey: string; plate: PlannedPlate }
  | { kind: 'plateRemoved'; plateKey: string; plate: PlannedPlate }
  | { kind: 'plateExchanged'; plateKey: string; before: string; after: string }
  | { kind: 'zone'; plateKey: string; before: PlannedPlate['zone']; after: PlannedPlate['zone'] }
  | {
      kind: 'principle';
      plateKey: string;
      before: PlannedPlate['principle'];
      after: PlannedPlate['principle'];
    }
  /** `undefined` is a hole that was not decided. */
  | {
      kind: 'hole';
      plateKey: string;
      holeId: string;
      before: HoleFill | undefined;
      after: HoleFill | undefined;
    }
  | { kind: 'freeScrewAdded'; screwKey: string; screw: FreeScrew }
  | { kind: 'freeScrewRemoved'; screwKey: string; screw: FreeScrew }
  | { kind: 'freeScrew'; screwKey: string; before: FreeScrew; after: FreeScrew };

/**
 * What differs between two constructs, hole by hole, in a stable order. Plates and free screws are matched by
 * their keys. Empty exactly when the two state the same, in whatever order they state it.
 */
export function compareConstructs(before: Construct, after: Construct): PlanChange[] {
  const changes: PlanChange[] = [];
  const note = <T>(change: (before: T, after: T) => PlanChange, was: T, is: T) => {
    if (!same(was, is)) changes.push(change(was, is));
  };
  note((b, a) => ({ kind: 'region', before: b, after: a }), before.region, after.region);
  note((b, a) => ({ kind: 'limb', before: b, after: a }), before.limb, after.limb);
  note((b, a) => ({ kind: 'bone', before: b, after: a }), before.bone, after.bone);
  note(
    (b, a) => ({ kind: 'sharedSpread', before: b, after: a }),
    before.sharedLengthSdMm,
    after.sharedLengthSdMm,
  );
  note((b, a) => ({ kind: 'note', before: b, after: a }), before.note, after.note);
  for (const [plateKey, was, is] of paired(before.plates, after.plates)) {
    if (was && is) changes.push(...comparePlates(plateKey, was, is));
    else if (is) changes.push({ kind: 'plateAdded', plateKey, plate: is });
    else if (was) changes.push({ kind: 'plateRemoved', plateKey, plate: was });
  }
  for (const [screwKey, was, is] of paired(before.freeScrews, after.freeScrews)) {
    if (was && is) note((b, a) => ({ kind: 'freeScrew', screwKey, before: b, after: a }), was, is);
    else if (is) changes.push({ kind: 'freeScrewAdded', screwKey, screw: is });
    else if (was) changes.push({ kind: 'freeScrewRemoved', screwKey, screw: was });
  }
  return changes;
}

function comparePlates(plateKey: string, was: PlannedPlate, is: PlannedPlate): PlanChange[] {
  const changes: PlanChange[] = [];
  if (was.plateItemId !== is.plateItemId) {
    changes.push({ kind: 'plateExchanged', plateKey, before: was.plateItemId, after: is.plateItemId });
  }
  if (was.principle !== is.principle) {
    changes.push({ kind: 'principle', plateKey, before: was.principle, after: is.principle });
  }
  if (!same(was.zone, is.zone)) changes.push({ kind: 'zone', plateKey, before: was.zone, after: is.zone });
  const holeIds = new Set([...Object.keys(was.fills), ...Object.keys(is.fills)]);
  for (const holeId of [...holeIds].sort(compareNatural)) {
    const [before, after] = [was.fills[holeId], is.fills[holeId]];
    if (!same(before, after)) changes.push({ kind: 'hole', plateKey, holeId, before, after });
  }
  return changes;
}

function paired<T extends { key: string }>(
  before: T[],
  after: T[],
): [string, T | undefined, T | undefined][] {
  const keys = [...new Set([...before, ...after].map(({ key }) => key))].sort(compareNatural);
  const find = (all: T[], key: string) => all.find((one) => one.key === key);
  return keys.map((key) => [key, find(before, key), find(after, key)]);
}

/** Equal content, in whatever order the keys were written. */
function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [keysA, keysB] = [Object.keys(a), Object.keys(b)];
  return (
    keysA.length === keysB.length &&
    keysA.every(
      (key) => key in b && same((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
    )
  );
}

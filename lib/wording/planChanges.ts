import { never } from '../identity/result';
import type { PlanChange } from '../plans/compare';
import {
  BONE_WORDS,
  fillWords,
  LIMB_WORDS,
  PRINCIPLE_WORDS,
  plainMm,
  REGION_WORDS,
  screwWords,
  zoneWords,
} from './plans';

/** One change between two versions: what it is about, and both values in words. `null` is "was not there". */
export interface ChangeWords {
  about: string;
  before: string | null;
  after: string | null;
}

/** @param itemName says the name of a plate, wire or washer by its id */
export function planChangeWords(change: PlanChange, itemName: (itemId: string) => string): ChangeWords {
  switch (change.kind) {
    case 'region':
      return { about: 'Region', before: REGION_WORDS[change.before], after: REGION_WORDS[change.after] };
    case 'limb':
      return { about: 'Side', before: limbWords(change.before), after: limbWords(change.after) };
    case 'bone':
      return { about: 'Bone', before: BONE_WORDS[change.before], after: BONE_WORDS[change.after] };
    case 'sharedSpread':
      return { about: 'Shared spread', before: spreadWords(change.before), after: spreadWords(change.after) };
    case 'note':
      return { about: 'Note', before: change.before ?? 'none', after: change.after ?? 'none' };
    case 'plateAdded':
      return { about: `Plate ${change.plateKey}`, before: null, after: itemName(change.plate.plateItemId) };
    case 'plateRemoved':
      return { about: `Plate ${change.plateKey}`, before: itemName(change.plate.plateItemId), after: null };
    case 'plateExchanged':
      return {
        about: `Plate ${change.plateKey}`,
        before: itemName(change.before),
        after: itemName(change.after),
      };
    case 'zone':
      return {
        about: `Plate ${change.plateKey}, fracture zone`,
        before: zoneWords(change.before),
        after: zoneWords(change.after),
      };
    case 'principle':
      return {
        about: `Plate ${change.plateKey}, principle`,
        before: change.before ? PRINCIPLE_WORDS[change.before] : 'not stated',
        after: change.after ? PRINCIPLE_WORDS[change.after] : 'not stated',
      };
    case 'hole':
      return {
        about: `Plate ${change.plateKey}, hole ${change.holeId}`,
        before: fillWords(change.before, itemName),
        after: fillWords(change.after, itemName),
      };
    case 'freeScrewAdded':
      return {
        about: `Free screw ${change.screwKey}`,
        before: null,
        after: freeScrewWords(change.screw, itemName),
      };
    case 'freeScrewRemoved':
      return {
        about: `Free screw ${change.screwKey}`,
        before: freeScrewWords(change.screw, itemName),
        after: null,
      };
    case 'freeScrew':
      return {
        about: `Free screw ${change.screwKey}`,
        before: freeScrewWords(change.before, itemName),
        after: freeScrewWords(change.after, itemName),
      };
    default:
      return never(change);
  }
}

/** `cortical 3.5, 40 mm, both cortices, with washer 7 mm`. */
export function freeScrewWords(
  screw: Parameters<typeof screwWords>[0] & { washerItemId: string | null },
  itemName: (itemId: string) => string,
): string {
  return screwWords(screw) + (screw.washerItemId ? `, with ${itemName(screw.washerItemId)}` : '');
}

function limbWords(limb: 'left' | 'right' | null): string {
  return limb ? LIMB_WORDS[limb] : 'Either side';
}

function spreadWords(sdMm: number | null): string {
  return sdMm === null ? 'none' : `± ${plainMm(sdMm)} mm`;
}

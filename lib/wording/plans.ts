import { never } from '../identity/result';
import type { Construct, HoleFill, PlannedLength, PlannedPlate } from '../plans/plan';
import { writeMm } from '../quantities/length';
import type { Urgency } from '../theatre/surgicalCase';

/** The words of cases and plans, as every screen and sheet says them. */

export const REGION_WORDS: Record<Construct['region'], string> = {
  clavicle: 'Clavicle',
  proximalHumerus: 'Proximal humerus',
  humerusShaft: 'Humerus shaft',
  distalHumerus: 'Distal humerus',
  olecranon: 'Olecranon',
  forearmShaft: 'Forearm shaft',
  distalRadius: 'Distal radius',
  hand: 'Hand',
  pelvis: 'Pelvis',
  proximalFemur: 'Proximal femur',
  femurShaft: 'Femur shaft',
  distalFemur: 'Distal femur',
  patella: 'Patella',
  proximalTibia: 'Proximal tibia',
  tibiaShaft: 'Tibia shaft',
  distalTibia: 'Distal tibia',
  ankle: 'Ankle',
  foot: 'Foot',
};

export const LIMB_WORDS: Record<'left' | 'right', string> = { left: 'Left', right: 'Right' };

export const BONE_WORDS: Record<Construct['bone'], string> = {
  normal: 'Normal',
  poor: 'Poor',
  notStated: 'Not stated',
};

export const PRINCIPLE_WORDS: Record<NonNullable<PlannedPlate['principle']>, string> = {
  compression: 'Compression',
  bridging: 'Bridging',
  combined: 'Combined',
  buttress: 'Buttress',
  neutralisation: 'Neutralisation',
};

export const PURPOSE_WORDS: Record<HoleFill['purpose'], string> = {
  empty: 'Left empty',
  neutral: 'Neutral',
  offset: 'Offset',
  lag: 'Lag',
  locked: 'Locked',
  temporaryWire: 'Temporary wire',
};

/** What each purpose means, for those who meet the word for the first time. */
export const PURPOSE_MEANINGS: Record<HoleFill['purpose'], string> = {
  empty: 'nothing goes in this hole',
  neutral: 'a plain screw drilled in the middle of its seat',
  offset: 'a plain screw drilled off the middle, so that the plate moves and compresses',
  lag: 'a screw that glides near and grips far, to press two fragments together',
  locked: 'a screw whose head threads into the plate',
  temporaryWire: 'a wire that holds the plate for a while',
};

export const PLAN_STATUS_WORDS: Record<'draft' | 'confirmed' | 'superseded', string> = {
  draft: 'Draft',
  confirmed: 'Confirmed',
  superseded: 'Superseded',
};

export const URGENCY_WORDS: Record<Urgency, string> = {
  booked: 'Booked',
  soon: 'Soon',
  today: 'Today',
  now: 'Now',
};

export const CORTICES_WORDS: Record<1 | 2, string> = { 1: 'one cortex', 2: 'both cortices' };

/** `16 mm`, `21.7 ± 2.6 mm`, `length not stated`. */
export function lengthWords(length: PlannedLength): string {
  switch (length.kind) {
    case 'exact':
      return `${plainMm(length.mm)} mm`;
    case 'spread':
      return `${plainMm(length.meanMm)} ± ${plainMm(length.sdMm)} mm`;
    case 'notStated':
      return 'length not stated';
    default:
      return never(length);
  }
}

/**
 * What goes in a hole, in one line: `Neutral, cortical 3.5, 16 mm, both cortices`.
 *
 * @param itemName says an item's name where the wire is known; its id is shown otherwise
 */
export function fillWords(
  fill: HoleFill | undefined,
  itemName: (itemId: string) => string = (id) => id,
): string {
  if (fill === undefined) return 'not decided';
  switch (fill.purpose) {
    case 'empty':
      return 'left empty';
    case 'temporaryWire':
      return `temporary wire, ${itemName(fill.wireItemId)}`;
    default:
      return `${PURPOSE_WORDS[fill.purpose].toLowerCase()}, ${screwWords(fill)}`;
  }
}

/** The screw of a hole or of a free screw: family, length, cortices and what longer length is accepted. */
export function screwWords(screw: {
  screwFamily: string;
  length: PlannedLength;
  cortices: 1 | 2;
  acceptLongerMm: number;
}): string {
  const longer = screw.acceptLongerMm > 0 ? `, up to ${screw.acceptLongerMm} mm longer accepted` : '';
  return `${screw.screwFamily}, ${lengthWords(screw.length)}, ${CORTICES_WORDS[screw.cortices]}${longer}`;
}

/** `from 40 to 62 mm`, along the plate from its shaft end. */
export function zoneWords(zone: PlannedPlate['zone']): string {
  return zone === null ? 'not marked' : `from ${writeMm(zone.fromUm)} to ${writeMm(zone.toUm)} mm`;
}

/** Stated millimetres as written, without digits that nobody stated. */
export function plainMm(mm: number): string {
  return String(Math.round(mm * 1000) / 1000);
}

import type { Hole, HoleClass, PlainSeat } from '../catalogue/hole';
import type {
  Coupling,
  DrillingPosition,
  DrillSleeve,
  Drive,
  Handle,
  Item,
  ItemKind,
  ItemOf,
  Plate,
  Screw,
  SleeveEnd,
  SleeveSeat,
  ThreadForm,
} from '../catalogue/item';
import type { Material, Side } from '../catalogue/measures';
import { never } from '../identity/result';
import { writeMm } from '../quantities/length';

/** The catalogue's words, as screens and paper say them. Singular, small, ready for the middle of a sentence. */

export const KIND_WORDS: Record<ItemKind, string> = {
  plate: 'plate',
  screw: 'screw',
  washer: 'washer',
  drillBit: 'drill bit',
  drillSleeve: 'drill sleeve',
  tap: 'tap',
  countersink: 'countersink',
  depthGauge: 'depth gauge',
  driver: 'driver',
  handle: 'handle',
  torqueLimiter: 'torque limiter',
  guideWire: 'guide wire',
  reductionForceps: 'reduction forceps',
  plateBender: 'plate bender',
  holder: 'holder',
  rack: 'screw rack',
  basket: 'basket',
  container: 'container',
  generalInstrument: 'general instrument',
  consumable: 'consumable',
};

export const HOLE_CLASS_WORDS: Record<HoleClass, string> = {
  round: 'round hole',
  compressionSlot: 'compression slot',
  threaded: 'threaded hole',
  polyaxialThreaded: 'polyaxial threaded hole',
  twoZone: 'two-zone hole',
  elongatedSlot: 'elongated slot',
  wireHole: 'wire hole',
};

export const PLAIN_SEAT_WORDS: Record<PlainSeat, string> = {
  spherical: 'spherical seat',
  conical: 'conical seat',
};

export const PLATE_SHAPE_WORDS: Record<Plate['shape'], string> = {
  straightNarrow: 'straight narrow',
  straightBroad: 'straight broad',
  oneThirdTubular: 'one-third tubular',
  tRightAngled: 'T, right-angled',
  tOblique: 'T, oblique',
  lShaped: 'L',
  cloverleaf: 'cloverleaf',
  reconstruction: 'reconstruction',
  buttress: 'buttress',
  anatomic: 'anatomic',
};

export const SCREW_KIND_WORDS: Record<Screw['screwKind'], string> = {
  cortical: 'cortical',
  cancellousFull: 'cancellous, full thread',
  cancellousPartial: 'cancellous, partial thread',
  locking: 'locking',
  cannulated: 'cannulated',
};

export const HEAD_WORDS: Record<NonNullable<Screw['head']>, string> = {
  spherical: 'spherical',
  conicalPlain: 'conical, plain',
  threaded: 'threaded',
};

export const TIP_WORDS: Record<NonNullable<Screw['tip']>, string> = {
  blunt: 'blunt',
  selfTapping: 'self-tapping',
  selfDrillingSelfTapping: 'self-drilling, self-tapping',
};

export const THREAD_FORM_WORDS: Record<ThreadForm, string> = {
  HA: 'HA (shallow, ISO 5835)',
  HB: 'HB (deep, ISO 5835)',
  HC: 'HC (ISO 9268)',
  HD: 'HD (ISO 9268)',
  locking: 'locking',
  other: 'other',
};

export const SLEEVE_FORM_WORDS: Record<DrillSleeve['form'], string> = {
  threaded: 'threaded',
  dualPosition: 'neutral and offset',
  doubleEnded: 'plain, double-ended',
  insert: 'insert',
  tissueProtection: 'tissue protection',
};

export const OUTER_FORM_WORDS: Record<NonNullable<SleeveEnd['outerForm']>, string> = {
  threaded: 'threaded',
  spherical: 'spherical',
  cylindrical: 'cylindrical',
  pronged: 'pronged',
};

export const SLEEVE_SEAT_WORDS: Record<SleeveSeat, string> = {
  ...HOLE_CLASS_WORDS,
  bone: 'bare bone',
  glidingHole: 'gliding hole',
};

export const DRILLING_POSITION_WORDS: Record<DrillingPosition, string> = {
  neutral: 'neutral',
  offset: 'offset',
  centred: 'centred',
};

export const COUPLING_FORM_WORDS: Record<Coupling['form'], string> = {
  hexShank: 'hexagonal shank',
  flattedShank: 'flatted shank',
  grooveShank: 'grooved shank',
  roundShank: 'round shank',
  wire: 'wire',
};

export const DRIVE_FORM_WORDS: Record<Drive['form'], string> = {
  hexagonSocket: 'hexagon socket (ISO 8319)',
  hexalobular: 'hexalobular (ISO 10664)',
  crossSlot: 'cross slot',
  singleSlot: 'single slot',
  square: 'square',
};

export const SEGMENT_WORDS: Record<Hole['segment'], string> = { shaft: 'shaft', head: 'head' };

export const HANDLE_FORM_WORDS: Record<Handle['form'], string> = {
  straight: 'straight',
  tShaped: 'T-shaped',
  ratchet: 'ratchet',
  power: 'power',
};

export const JAW_WORDS: Record<NonNullable<ItemOf<'reductionForceps'>['jaw']>, string> = {
  pointed: 'pointed',
  serrated: 'serrated',
  toothed: 'toothed',
  ballTipped: 'ball-tipped',
};

export const BENDER_FORM_WORDS: Record<NonNullable<ItemOf<'plateBender'>['form']>, string> = {
  bendingPress: 'bending press',
  bendingIron: 'bending iron',
  bendingPliers: 'bending pliers',
};

export const HOLDS_WORDS: Record<NonNullable<ItemOf<'holder'>['holds']>, string> = {
  plate: 'a plate',
  screw: 'a screw',
  wire: 'a wire',
  bone: 'bone',
};

export const MATERIAL_WORDS: Record<Material, string> = {
  'iso5832-1': 'stainless steel (ISO 5832-1)',
  'iso5832-2': 'titanium, unalloyed (ISO 5832-2)',
  'iso5832-3': 'titanium 6Al 4V (ISO 5832-3)',
  'iso5832-9': 'high-nitrogen steel (ISO 5832-9)',
  'iso5832-11': 'titanium 6Al 7Nb (ISO 5832-11)',
  'iso5832-12': 'cobalt-chromium (ISO 5832-12)',
  'iso7153-1': 'instrument steel (ISO 7153-1)',
  polymer: 'polymer',
  other: 'other',
};

export const SIDE_WORDS: Record<Side, string> = { left: 'left', right: 'right', either: 'either side' };

export const ITEM_STATUS_WORDS: Record<Item['status'], string> = {
  current: 'Current',
  withdrawn: 'Withdrawn',
  recalled: 'Recalled',
};

export const USE_WORDS: Record<Item['use'], string> = {
  singleUse: 'single use',
  reprocessable: 'reprocessable',
};

/** `hexagon socket 2.5 mm`, `hexalobular 8`. */
export function driveWords(drive: Drive): string {
  switch (drive.form) {
    case 'hexagonSocket':
      return `hexagon socket ${writeMm(drive.acrossFlatsUm)} mm (ISO 8319)`;
    case 'hexalobular':
      return `hexalobular ${drive.number} (ISO 10664)`;
    case 'crossSlot':
      return `cross slot ${writeMm(drive.sizeUm)} mm`;
    case 'singleSlot':
      return `single slot ${writeMm(drive.sizeUm)} mm`;
    case 'square':
      return `square ${writeMm(drive.sizeUm)} mm`;
    default:
      return never(drive);
  }
}

/** `hexagonal shank 6 mm`. */
export function couplingWords({ form, sizeUm }: Coupling): string {
  return `${COUPLING_FORM_WORDS[form]} ${writeMm(sizeUm)} mm`;
}

/** `6 compression slots, 2 round holes`, in the order the plate first has them. */
export function holesInWords(holes: readonly { holeClass: HoleClass }[]): string {
  const counts = new Map<HoleClass, number>();
  for (const { holeClass } of holes) counts.set(holeClass, (counts.get(holeClass) ?? 0) + 1);
  if (counts.size === 0) return 'no holes';
  return [...counts]
    .map(([holeClass, count]) => `${count} ${HOLE_CLASS_WORDS[holeClass]}${count === 1 ? '' : 's'}`)
    .join(', ');
}

/** First letter large, for headings and the beginnings of sentences. */
export function sentenceCase(words: string): string {
  return words.charAt(0).toLocaleUpperCase('en-GB') + words.slice(1);
}

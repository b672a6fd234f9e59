import { coupling, drillingPosition, sleeveEnd, sleeveSeat, threadForm } from '../catalogue/fittings';
import { HAS_PLAIN_ZONE, HAS_THREADED_ZONE, type Hole, holeClass, plainSeat } from '../catalogue/hole';
import {
  type Countersink,
  type Coupling,
  type DepthGauge,
  type DrillBit,
  type DrillSleeve,
  type Drive,
  type Driver,
  drillSleeve,
  type GuideWire,
  type Handle,
  ITEM_KINDS,
  type Item,
  type Plate,
  plate,
  type Screw,
  type SleeveEnd,
  type SleeveSeat,
  screw,
  type Tap,
  type TorqueLimiter,
} from '../catalogue/item';
import { METAL_GROUP, material, side } from '../catalogue/measures';
import { writeMm } from '../quantities/length';
import type { ScrewUse, Shanked } from './question';

/** What a rule can know of one participant. `null` is not stated, and never zero, false or "none". */
export type FactValue = string | number | boolean | readonly (string | number)[] | null;

/** The unit, or sort, of a fact's value. Only facts of one unit can be compared. */
export type FactUnit =
  | 'um'
  | 'degrees'
  | 'newtonMillimetres'
  | 'count'
  | 'text'
  | 'flag'
  | 'umList'
  | 'textList';

export interface Fact<S> {
  unit: FactUnit;
  /** The only values a text can have, where they are listed. */
  choices?: readonly string[];
  /** For a derived fact: the stated one it comes from, named instead when it is missing. */
  from?: string;
  read: (subject: S) => FactValue;
}

const um = <S>(read: (s: S) => number | null): Fact<S> => ({ unit: 'um', read });
const text = <S>(read: (s: S) => string | null, choices?: readonly string[]): Fact<S> => ({
  unit: 'text',
  choices,
  read,
});
const flag = <S>(read: (s: S) => boolean | null): Fact<S> => ({ unit: 'flag', read });
const torque = <S>(read: (s: S) => number | null): Fact<S> => ({ unit: 'newtonMillimetres', read });
const degrees = <S>(read: (s: S) => number | null): Fact<S> => ({ unit: 'degrees', read });

/** A fact worked out from another of the same participant. */
const derived = <S>(from: string, fact: Fact<S>): Fact<S> => ({ ...fact, from });

/** An empty list says nothing, so it counts as not stated. */
const stated = <T>(list: readonly T[] | null): readonly T[] | null => (list && list.length > 0 ? list : null);

/** A drive as one comparable text: its form, and its number (ISO 10664) or size (ISO 8319). */
export function driveText(drive: Drive | null): string | null {
  if (!drive) return null;
  switch (drive.form) {
    case 'hexalobular':
      return `hexalobular ${drive.number}`;
    case 'hexagonSocket':
      return `hexagon socket ${writeMm(drive.acrossFlatsUm)} mm`;
    case 'crossSlot':
      return `cross slot ${writeMm(drive.sizeUm)} mm`;
    case 'singleSlot':
      return `single slot ${writeMm(drive.sizeUm)} mm`;
    case 'square':
      return `square ${writeMm(drive.sizeUm)} mm`;
  }
}

const COUPLING_TEXT: Record<Coupling['form'], string> = {
  hexShank: 'hexagonal shank',
  flattedShank: 'flatted shank',
  grooveShank: 'grooved shank',
  roundShank: 'round shank',
  wire: 'wire',
};

/** A shank as one comparable text: form and size. */
export function couplingText(shank: Coupling | null): string | null {
  return shank && `${COUPLING_TEXT[shank.form]} ${writeMm(shank.sizeUm)} mm`;
}

const couplingTexts = (takes: readonly Coupling[] | null) =>
  stated(takes)?.map((one) => couplingText(one) ?? '') ?? null;

/** What every catalogue entry can be asked. */
export const itemFacts = {
  kind: text<Item>((i) => i.kind, ITEM_KINDS),
  code: text<Item>((i) => i.code),
  makerId: text<Item>((i) => i.makerId),
  side: text<Item>((i) => i.side, side.options),
  material: text<Item>((i) => i.material, material.options),
  /** Derived: steel, titanium, cobalt, or none for what is not metal. */
  metalGroup: derived(
    'material',
    text<Item>((i) => i.material && METAL_GROUP[i.material], ['steel', 'titanium', 'cobalt', 'none']),
  ),
  status: text<Item>((i) => i.status, ['current', 'withdrawn', 'recalled']),
};

export const screwFacts = {
  ...itemFacts,
  screwKind: text<Screw>((s) => s.screwKind, screw.shape.screwKind.options),
  screwFamily: text<Screw>((s) => s.screwFamily),
  threadForm: text<Screw>((s) => s.threadForm, threadForm.options),
  threadUm: um<Screw>((s) => s.threadUm),
  coreUm: um<Screw>((s) => s.coreUm),
  shaftUm: um<Screw>((s) => s.shaftUm),
  threadLengthUm: um<Screw>((s) => s.threadLengthUm),
  pitchUm: um<Screw>((s) => s.pitchUm),
  head: text<Screw>((s) => s.head, ['spherical', 'conicalPlain', 'threaded']),
  /** Derived: the form under the head, in the words of a hole's seat. */
  underHead: derived(
    'head',
    text<Screw>((s) => (s.head === 'conicalPlain' ? 'conical' : s.head), [...plainSeat.options, 'threaded']),
  ),
  headUm: um<Screw>((s) => s.headUm),
  /** Derived: whether its head locks in a threaded zone. */
  locks: derived(
    'head',
    flag<Screw>((s) => s.screwKind === 'locking' || (s.head === null ? null : s.head === 'threaded')),
  ),
  lockingFamily: text<Screw>((s) => s.lockingFamily),
  driveForm: derived(
    'drive',
    text<Screw>(
      (s) => s.drive?.form ?? null,
      ['hexagonSocket', 'hexalobular', 'crossSlot', 'singleSlot', 'square'],
    ),
  ),
  /** Derived: form and size together. */
  drive: text<Screw>((s) => driveText(s.drive)),
  tip: text<Screw>((s) => s.tip, ['blunt', 'selfTapping', 'selfDrillingSelfTapping']),
  cannulationUm: um<Screw>((s) => s.cannulationUm),
  torqueNmm: torque<Screw>((s) => s.torqueNmm),
  countersinkStated: flag<Screw>((s) => s.countersinkStated),
  lengthUm: um<Screw>((s) => s.lengthUm),
};

export const holeFacts = {
  segment: text<Hole>((h) => h.segment, ['shaft', 'head']),
  holeClass: text<Hole>((h) => h.holeClass, holeClass.options),
  tiltAlongDegrees: degrees<Hole>((h) => h.tiltAlongDegrees),
  tiltAcrossDegrees: degrees<Hole>((h) => h.tiltAcrossDegrees),
  openingUm: um<Hole>((h) => h.openingUm),
  seatUm: um<Hole>((h) => h.seatUm),
  plainSeat: text<Hole>((h) => h.plainSeat, plainSeat.options),
  slotUm: um<Hole>((h) => h.slotUm),
  lockingFamily: text<Hole>((h) => h.lockingFamily),
  lockingConeDegrees: degrees<Hole>((h) => h.lockingConeDegrees),
  /** Derived from the class: a zone that takes a plain screw's head. */
  hasPlainZone: flag<Hole>((h) => HAS_PLAIN_ZONE[h.holeClass]),
  /** Derived from the class: a zone that takes a locking screw's head. */
  hasThreadedZone: flag<Hole>((h) => HAS_THREADED_ZONE[h.holeClass]),
};

export const plateFacts = {
  ...itemFacts,
  shape: text<Plate>((p) => p.shape, plate.shape.shape.options),
  takesThreadsUm: { unit: 'umList', read: (p) => stated(p.takesThreadsUm) } satisfies Fact<Plate>,
  lengthUm: um<Plate>((p) => p.lengthUm),
  widthUm: um<Plate>((p) => p.widthUm),
  thicknessUm: um<Plate>((p) => p.thicknessUm),
};

export const useFacts = {
  purpose: text<ScrewUse>((u) => u.purpose, ['neutral', 'offset', 'lag', 'locked']),
  cortices: { unit: 'count', read: (u) => u.cortices } satisfies Fact<ScrewUse>,
};

export const sleeveFacts = {
  ...itemFacts,
  form: text<DrillSleeve>((s) => s.form, drillSleeve.shape.form.options),
  /** Derived: whether it is made for certain plates only. */
  restrictedToPlates: flag<DrillSleeve>((s) => s.onlyForPlates !== null),
  /** Codes of those plates. */
  onlyForPlates: { unit: 'textList', read: (s) => s.onlyForPlates } satisfies Fact<DrillSleeve>,
  lengthUm: um<DrillSleeve>((s) => s.lengthUm),
};

export const endFacts = {
  boreUm: um<SleeveEnd>((e) => e.boreUm),
  outerUm: um<SleeveEnd>((e) => e.outerUm),
  outerForm: text<SleeveEnd>((e) => e.outerForm, sleeveEnd.shape.outerForm.unwrap().options),
  seatsOn: {
    unit: 'textList',
    choices: sleeveSeat.options,
    read: (e) => stated(e.seatsOn),
  } satisfies Fact<SleeveEnd>,
  positions: {
    unit: 'textList',
    choices: drillingPosition.options,
    read: (e) => stated(e.positions),
  } satisfies Fact<SleeveEnd>,
  lockingFamily: text<SleeveEnd>((e) => e.lockingFamily),
};

/** What a sleeve is to sit on: a hole, bare bone, or the gliding hole drilled before. */
export interface Seat {
  on: 'hole' | 'bone' | 'glidingHole';
  name: SleeveSeat;
  plateCode: string | null;
}

export const seatFacts = {
  on: text<Seat>((s) => s.on, ['hole', 'bone', 'glidingHole']),
  /** The hole's class, or bone, or gliding hole. */
  name: text<Seat>((s) => s.name, sleeveSeat.options),
  /** Code of the plate whose hole it is. */
  plateCode: text<Seat>((s) => s.plateCode),
};

export const glidingHoleFacts = { diameterUm: um<{ diameterUm: number | null }>((g) => g.diameterUm) };
export const drillingFacts = {
  position: text<{ position: string }>((d) => d.position, drillingPosition.options),
};
export const limbFacts = { side: text<{ side: string }>((l) => l.side, ['left', 'right']) };

export const bitFacts = {
  ...itemFacts,
  diameterUm: um<DrillBit>((b) => b.diameterUm),
  lengthUm: um<DrillBit>((b) => b.lengthUm),
  cannulationUm: um<DrillBit>((b) => b.cannulationUm),
};

export const toolFacts = {
  ...itemFacts,
  diameterUm: um<DrillBit | GuideWire>((t) => t.diameterUm),
  lengthUm: um<DrillBit | GuideWire>((t) => t.lengthUm),
};

export const tapFacts = {
  ...itemFacts,
  threadForm: text<Tap>((t) => t.threadForm, threadForm.options),
  threadUm: um<Tap>((t) => t.threadUm),
  lengthUm: um<Tap>((t) => t.lengthUm),
};

export const countersinkFacts = {
  ...itemFacts,
  headUm: um<Countersink>((c) => c.headUm),
  pinUm: um<Countersink>((c) => c.pinUm),
};

export const gaugeFacts = {
  ...itemFacts,
  fromUm: um<DepthGauge>((g) => g.fromUm),
  toUm: um<DepthGauge>((g) => g.toUm),
  hookUm: um<DepthGauge>((g) => g.hookUm),
  forThreadsUm: { unit: 'umList', read: (g) => stated(g.forThreadsUm) } satisfies Fact<DepthGauge>,
};

export const driverFacts = {
  ...itemFacts,
  driveForm: derived(
    'drive',
    text<Driver>((d) => d.drive?.form ?? null, screwFacts.driveForm.choices),
  ),
  drive: text<Driver>((d) => driveText(d.drive)),
  holdsScrew: flag<Driver>((d) => d.holdsScrew),
  lengthUm: um<Driver>((d) => d.lengthUm),
  cannulationUm: um<Driver>((d) => d.cannulationUm),
};

export const shankFacts = {
  ...itemFacts,
  couplingForm: text<Shanked>((i) => i.coupling?.form ?? null, coupling.shape.form.options),
  coupling: text<Shanked>((i) => couplingText(i.coupling)),
  /** Derived: a handle that cannot come off; false for kinds that never have one. */
  fixedHandle: flag<Shanked>((i) => 'fixedHandle' in i && i.fixedHandle),
};

export const socketFacts = {
  ...itemFacts,
  takes: { unit: 'textList', read: (s) => couplingTexts(s.takes) } satisfies Fact<Handle | TorqueLimiter>,
};

export const limiterFacts = {
  ...itemFacts,
  torqueNmm: torque<TorqueLimiter>((l) => l.torqueNmm),
};

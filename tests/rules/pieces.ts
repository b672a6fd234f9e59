import type { Hole } from '@/lib/catalogue/hole';
import {
  type Countersink,
  type DepthGauge,
  type DrillBit,
  type DrillSleeve,
  type Driver,
  type GuideWire,
  type Handle,
  type ItemKind,
  type ItemOf,
  item,
  type Plate,
  type Screw,
  type SleeveEnd,
  type Tap,
  type TorqueLimiter,
} from '@/lib/catalogue/item';
import type { Question, SleeveByEnd } from '@/lib/fit/question';

/** Invented pieces, whole and alike; a test changes only what it is about. All of them pass the catalogue's schema. */
let made = 0;

function piece<K extends ItemKind>(kind: K, detail: object, more: object): ItemOf<K> {
  made += 1;
  const common = {
    id: `item_piece-${made}`,
    code: `PIECE-${made}`,
    name: `Invented ${kind}`,
    nickname: null,
    makerId: 'maker_invented',
    side: null,
    material: 'iso5832-1',
    suppliedSterile: false,
    use: 'reprocessable',
    reprocessingLimit: null,
    massGrams: null,
    unitCostPence: null,
    packMultiple: 1,
    gtin: null,
    partsPerPiece: 1,
    status: 'current',
  };
  return item.parse({ ...common, kind, ...detail, ...more }) as ItemOf<K>;
}

/** A cortical screw HA 3.5 × 16, self-tapping, hexagon 2.5. */
export const corticalScrew = (more: Partial<Screw> = {}): Screw =>
  piece(
    'screw',
    {
      screwKind: 'cortical',
      screwFamily: 'Cortical 3.5',
      threadForm: 'HA',
      threadUm: 3500,
      coreUm: 2400,
      shaftUm: null,
      threadLengthUm: null,
      pitchUm: 1250,
      head: 'spherical',
      headUm: 6000,
      lockingFamily: null,
      drive: { form: 'hexagonSocket', acrossFlatsUm: 2500 },
      tip: 'selfTapping',
      cannulationUm: null,
      torqueNmm: null,
      countersinkStated: true,
      lengthUm: 16000,
    },
    more,
  );

/** A locking screw 3.5 × 16 of the family "Alpha", self-tapping. */
export const lockingScrew = (more: Partial<Screw> = {}): Screw =>
  corticalScrew({
    screwKind: 'locking',
    screwFamily: 'Locking 3.5',
    threadForm: 'locking',
    coreUm: 2800,
    head: 'threaded',
    headUm: 5000,
    lockingFamily: 'Alpha',
    drive: { form: 'hexalobular', number: 15 },
    torqueNmm: 1500,
    countersinkStated: false,
    ...more,
  });

/** A cancellous screw HB 6.5 × 60, thread of 16. */
export const partlyThreadedScrew = (more: Partial<Screw> = {}): Screw =>
  corticalScrew({
    screwKind: 'cancellousPartial',
    screwFamily: 'Cancellous 6.5, thread 16',
    threadForm: 'HB',
    threadUm: 6500,
    coreUm: 3000,
    shaftUm: 4500,
    threadLengthUm: 16000,
    headUm: 8000,
    tip: 'blunt',
    lengthUm: 60000,
    ...more,
  });

/** A compression slot for HA 3.5. */
export const hole = (more: Partial<Hole> = {}): Hole => ({
  id: 'S1',
  segment: 'shaft',
  holeClass: 'compressionSlot',
  alongUm: 8000,
  acrossUm: 0,
  tiltAlongDegrees: 0,
  tiltAcrossDegrees: 0,
  openingUm: 4000,
  seatUm: 6500,
  plainSeat: 'spherical',
  slotUm: 8500,
  lockingFamily: null,
  lockingConeDegrees: null,
  ...more,
});

export const threadedHole = (more: Partial<Hole> = {}): Hole =>
  hole({
    holeClass: 'threaded',
    openingUm: null,
    seatUm: null,
    plainSeat: null,
    slotUm: null,
    lockingFamily: 'Alpha',
    ...more,
  });

export const twoZoneHole = (more: Partial<Hole> = {}): Hole =>
  hole({ holeClass: 'twoZone', lockingFamily: 'Alpha', ...more });

export const wireHole = (): Hole =>
  threadedHole({ holeClass: 'wireHole', lockingFamily: null, openingUm: 1300 });

export const plate = (more: Partial<Plate> = {}): Plate =>
  piece(
    'plate',
    {
      side: 'either',
      shape: 'straightNarrow',
      takesThreadsUm: [3500],
      lengthUm: 100000,
      widthUm: 10000,
      headWidthUm: null,
      thicknessUm: 3000,
      lookAlikeOf: null,
      holes: [hole()],
    },
    more,
  );

export const bit = (diameterUm: number | null, more: Partial<DrillBit> = {}): DrillBit =>
  piece('drillBit', { diameterUm, lengthUm: 125000, coupling: null, cannulationUm: null }, more);

export const wire = (diameterUm: number | null): GuideWire =>
  piece('guideWire', { diameterUm, lengthUm: 150000, threadedTip: false }, {});

/** One end of a double-ended sleeve 2.5 for slots, and the sleeve it belongs to. */
export function sleeve(end: Partial<SleeveEnd> = {}, more: Partial<DrillSleeve> = {}): SleeveByEnd {
  const whole: SleeveEnd = {
    boreUm: 2500,
    outerUm: 6000,
    outerForm: 'spherical',
    seatsOn: ['compressionSlot', 'twoZone', 'round'],
    positions: ['neutral'],
    lockingFamily: null,
    ...end,
  };
  const owner = piece(
    'drillSleeve',
    { form: 'doubleEnded', ends: [whole], onlyForPlates: null, lengthUm: 60000 },
    more,
  );
  const first = owner.ends[0];
  if (!first) throw new Error('a sleeve has an end');
  return { sleeve: owner, end: first, endIndex: 0 };
}

export const threadedSleeve = (end: Partial<SleeveEnd> = {}): SleeveByEnd =>
  sleeve({
    boreUm: 2800,
    outerForm: 'threaded',
    seatsOn: ['threaded', 'twoZone'],
    positions: ['centred'],
    lockingFamily: 'Alpha',
    ...end,
  });

export const insert = (end: Partial<SleeveEnd> = {}): SleeveByEnd =>
  sleeve({
    outerUm: 3500,
    outerForm: 'cylindrical',
    seatsOn: ['glidingHole'],
    positions: ['centred'],
    ...end,
  });

export const tap = (more: Partial<Tap> = {}): Tap =>
  piece('tap', { threadForm: 'HA', threadUm: 3500, lengthUm: 110000, coupling: null }, more);

export const countersink = (more: Partial<Countersink> = {}): Countersink =>
  piece('countersink', { headUm: 6000, pinUm: 2500, coupling: null }, more);

export const gauge = (more: Partial<DepthGauge> = {}): DepthGauge =>
  piece('depthGauge', { fromUm: 6000, toUm: 60000, hookUm: 2000, forThreadsUm: [2700, 3500] }, more);

export const driver = (more: Partial<Driver> = {}): Driver =>
  piece(
    'driver',
    {
      drive: { form: 'hexagonSocket', acrossFlatsUm: 2500 },
      holdsScrew: true,
      lengthUm: 200000,
      coupling: { form: 'hexShank', sizeUm: 6300 },
      fixedHandle: false,
      cannulationUm: null,
    },
    more,
  );

export const handle = (more: Partial<Handle> = {}): Handle =>
  piece('handle', { form: 'straight', takes: [{ form: 'hexShank', sizeUm: 6300 }] }, more);

export const limiter = (more: Partial<TorqueLimiter> = {}): TorqueLimiter =>
  piece(
    'torqueLimiter',
    {
      torqueNmm: 1500,
      takes: [{ form: 'hexShank', sizeUm: 6300 }],
      coupling: { form: 'hexShank', sizeUm: 6300 },
      fixedHandle: false,
    },
    more,
  );

type Of<R extends Question['relation']> = Extract<Question, { relation: R }>;

export const seats = (more: Partial<Of<'seats'>> = {}): Question => ({
  relation: 'seats',
  screw: corticalScrew(),
  hole: hole(),
  plate: null,
  use: null,
  ...more,
});

export const onHole = (at: Hole, on: Plate | null = null): Of<'guides'>['seat'] => ({
  on: 'hole',
  hole: at,
  plate: on,
});
export const inGlidingHole = (diameterUm: number | null): Of<'guides'>['seat'] => ({
  on: 'glidingHole',
  diameterUm,
});

export const guides = (more: Partial<Of<'guides'>> = {}): Question => ({
  relation: 'guides',
  by: sleeve(),
  seat: onHole(hole()),
  position: null,
  ...more,
});

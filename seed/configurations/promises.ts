import type { Construct } from '@/lib/plans/plan';
import {
  constructOf,
  each,
  empty,
  exact,
  free,
  lag,
  locked,
  neutral,
  offset,
  type PlatePlan,
} from '../cases/constructs';

interface Promised {
  name: string;
  construct: Construct;
}

/** A construct the set is meant to allow, for either side. */
const promise = (
  name: string,
  region: Construct['region'],
  plates: PlatePlan[],
  freeScrews: Construct['freeScrews'] = [],
): Promised => ({
  name,
  construct: constructOf({ region, limb: null, plates: plates.map(withLonger), freeScrews }),
});

/** A promise holds where one length runs out and the next, 2 mm longer, is taken. */
const withLonger = (plate: PlatePlan): PlatePlan => ({
  ...plate,
  fills: Object.fromEntries(
    Object.entries(plate.fills).map(([hole, fill]) => [
      hole,
      'screwFamily' in fill ? { ...fill, acceptLongerMm: 2 } : fill,
    ]),
  ),
});

export const compressionForearm = promise('Compression plate on a forearm shaft', 'forearmShaft', [
  {
    code: 'CR-P35-N-07',
    zoneMm: [40, 44],
    principle: 'compression',
    fills: {
      ...each(['S1', 'S2', 'S5', 'S6', 'S7'], neutral('CR-C35', exact(16))),
      S3: offset('CR-C35', exact(16)),
      S4: empty,
    },
  },
]);

export const tubularAnkle = promise('Lag screw and one-third tubular plate at the ankle', 'ankle', [
  {
    code: 'CR-P35-H-06',
    zoneMm: [30, 42],
    principle: 'neutralisation',
    fills: {
      ...each(['S1', 'S2', 'S5', 'S6'], neutral('CR-C35', exact(14))),
      S3: empty,
      S4: lag('CR-C35', exact(20)),
    },
  },
]);

export const lockingForearm = promise('Locking plate bridging a forearm shaft', 'forearmShaft', [
  {
    code: 'CR-Q35-N-08',
    zoneMm: [44, 64],
    principle: 'bridging',
    fills: {
      ...each(['S1', 'S2', 'S3', 'S6', 'S7', 'S8'], locked('CR-L35', exact(18))),
      S4: empty,
      S5: empty,
    },
  },
]);

export const combinedForearm = promise('Plain and locking screws in one plate', 'forearmShaft', [
  {
    code: 'CR-Q35-N-07',
    zoneMm: [43, 47],
    principle: 'combined',
    fills: {
      ...each(['S1', 'S7'], locked('CR-L35', exact(16))),
      ...each(['S2', 'S5', 'S6'], neutral('CR-C35', exact(16))),
      S3: offset('CR-C35', exact(16)),
      S4: empty,
    },
  },
]);

export const lockingTitanium35 = promise('Two-zone titanium plate bridging a humerus', 'humerusShaft', [
  {
    code: 'SF-Q35-N-09',
    zoneMm: [48, 70],
    principle: 'bridging',
    fills: {
      ...each(['S1', 'S2', 'S3', 'S7', 'S8', 'S9'], locked('SF-L35', exact(24))),
      ...each(['S4', 'S5', 'S6'], empty),
    },
  },
]);

export const mini20 = promise('Straight plate 2.0 on a metacarpal', 'hand', [
  {
    code: 'CR-P20-N-05',
    zoneMm: [13, 17],
    principle: 'neutralisation',
    fills: { ...each(['S1', 'S2', 'S4', 'S5'], neutral('CR-C20', exact(10))), S3: empty },
  },
]);

export const compression27 = promise('Compression plate 2.7', 'hand', [
  {
    code: 'CR-P27-N-06',
    zoneMm: [24, 27],
    principle: 'compression',
    fills: {
      ...each(['S1', 'S2', 'S5', 'S6'], neutral('CR-C27', exact(14))),
      S3: offset('CR-C27', exact(14)),
      S4: empty,
    },
  },
]);

export const miniLocking = promise('Locking T plate 2.0', 'hand', [
  {
    code: 'SF-Q20-T-03',
    zoneMm: [19, 23],
    principle: 'buttress',
    fills: {
      ...each(['H1', 'H2', 'H3'], locked('SF-L20', exact(10), 1)),
      ...each(['S1', 'S2'], neutral('SF-C20', exact(10))),
      S3: empty,
    },
  },
]);

export const lockingTibia = promise('Broad two-zone plate bridging a femur', 'femurShaft', [
  {
    code: 'CR-Q45-B-12',
    zoneMm: [90, 130],
    principle: 'bridging',
    fills: {
      ...each(['S1', 'S3', 'S4', 'S9', 'S10', 'S12'], locked('CR-L50', exact(40))),
      ...each(['S2', 'S5', 'S6', 'S7', 'S8', 'S11'], empty),
    },
  },
]);

export const compressionTibia = promise('Narrow compression plate on a tibia', 'tibiaShaft', [
  {
    code: 'CR-P45-N-08',
    zoneMm: [70, 76],
    principle: 'compression',
    fills: {
      ...each(['S1', 'S2', 'S5', 'S7', 'S8'], neutral('CR-C45', exact(34))),
      S4: offset('CR-C45', exact(34)),
      ...each(['S3', 'S6'], empty),
    },
  },
]);

export const plateauButtress = promise(
  'L buttress plate with 6.5 screws at a plateau',
  'proximalTibia',
  [],
  [free('L1', 'CR-J65', exact(70), 'CR-W-65')],
);

/** Head holes locked, shaft held by plain screws: what an anatomic plate's set is for. */
export const anatomic = (
  name: string,
  region: Construct['region'],
  code: string,
  head: { holes: string[]; family: string; mm: number },
  shaft: { holes: string[]; family: string; mm: number },
): Promised =>
  promise(name, region, [
    {
      code,
      zoneMm: null,
      principle: 'buttress',
      fills: {
        ...each(head.holes, locked(head.family, exact(head.mm), 1)),
        ...each(shaft.holes, neutral(shaft.family, exact(shaft.mm))),
      },
    },
  ]);

import type { SetPlan } from './setPlan';

const inStore = { step: 'inSterileStore', place: 'place_store-c' } as const;

/** Large sets, and those without implants. */
export const LARGE_SETS: SetPlan[] = [
  { code: 'LFS-01', configuration: 'LFS', ...inStore, hoursInStep: 100, useByDays: 150 },
  // no insert sleeve for lag screws, and the long 6.5 screws have run low: it goes for one case without lag screws
  {
    code: 'LFS-02',
    configuration: 'LFS',
    ...inStore,
    hoursInStep: 20,
    useByDays: 179,
    short: { 'CR-S-I45': { found: 0 }, 'CR-J65-70': { found: 1 }, 'CR-J65-75': { found: 1 } },
    sentShort: {
      forCase: 'LM-26-H2LT',
      by: ['person_gwen-sallis', 'person_tobias-wray'],
      reason:
        'No lag screw is planned in this case, so the insert sleeve is not needed; a new one is on order.',
    },
  },
  {
    code: 'LFS-03',
    configuration: 'LFS',
    step: 'washing',
    hoursInStep: 1,
    ready: [1, '11:00'],
    place: 'place_dirty-side',
  },

  // no sound pilot bit for plain screws in it: the 4.3 bit and the 3.2 sleeve do not help each other, so a pouch travels with it
  {
    code: 'LFL-01',
    configuration: 'LFL',
    ...inStore,
    hoursInStep: 64,
    useByDays: 150,
    short: { 'CR-B32-145': { found: 0, unsound: 2, condition: 'blunt' } },
    sentShort: {
      standIns: ['CR-B32-145'],
      by: ['person_hettie-crane'],
      reason: 'Both bits were blunt and are discarded; a sharp one goes with it as a pouch.',
    },
  },
  {
    code: 'LFL-02',
    configuration: 'LFL',
    ...inStore,
    hoursInStep: 31,
    useByDays: 165,
    short: { 'CR-L50-40': { found: 2 }, 'CR-L50-42': { found: 1 } },
  },

  {
    code: 'PTT-01',
    configuration: 'PTT',
    step: 'inTheatre',
    hoursInStep: 3,
    ready: [1, '14:00'],
    place: null,
  },
  {
    code: 'PTT-02',
    configuration: 'PTT',
    step: 'held',
    heldBecause: 'disputedCount',
    hoursInStep: 20,
    place: 'place_held-shelf',
    short: { 'SF-L50-70': { found: 4 } },
    countedBy: 'person_tomas-birkett',
    secondCount: {
      by: 'person_jolene-stott',
      short: { 'SF-L50-70': { found: 5 }, 'SF-L50-65': { found: 5 } },
    },
  },
  {
    code: 'DFF-01',
    configuration: 'DFF',
    step: 'held',
    heldBecause: 'mustHaveDamaged',
    hoursInStep: 27,
    place: 'place_held-shelf',
    short: { 'SF-S-T50': { found: 0, unsound: 2, condition: 'boreWorn' } },
  },

  {
    code: 'GEN-01',
    configuration: 'GEN',
    step: 'inSterileStore',
    hoursInStep: 12,
    useByDays: 180,
    place: 'place_theatre-store',
  },
  { code: 'GEN-02', configuration: 'GEN', ...inStore, hoursInStep: 28, useByDays: 175 },
  {
    code: 'GEN-03',
    configuration: 'GEN',
    step: 'inTheatre',
    hoursInStep: 2,
    ready: [1, '10:00'],
    place: null,
  },
  {
    code: 'GEN-04',
    configuration: 'GEN',
    version: 1,
    ...inStore,
    hoursInStep: 3_400,
    useByDays: -2,
    short: { 'PT-X-HAMMER': { found: 0 } },
  },

  {
    code: 'PWR-01',
    configuration: 'PWR',
    step: 'inSterileStore',
    hoursInStep: 9,
    useByDays: 180,
    place: 'place_theatre-store',
  },
  { code: 'PWR-02', configuration: 'PWR', ...inStore, hoursInStep: 22, useByDays: 178 },
  {
    code: 'PWR-03',
    configuration: 'PWR',
    step: 'comingBack',
    hoursInStep: 1,
    ready: [1, '08:00'],
    place: null,
  },
  {
    code: 'PWR-04',
    configuration: 'PWR',
    step: 'held',
    heldBecause: 'dirtyAfterWash',
    hoursInStep: 2,
    place: 'place_dirty-side',
  },

  { code: 'BEN-01', configuration: 'BEN', ...inStore, hoursInStep: 140, useByDays: 140 },
  {
    code: 'BEN-02',
    configuration: 'BEN',
    step: 'inSteriliser',
    hoursInStep: 1,
    readyInMinutes: 110,
    place: null,
    short: { 'PT-N-PLIERS': { found: 0, unsound: 1, condition: 'bent' } },
  },
];

import type { SetPlan } from './setPlan';

const inStore = { step: 'inSterileStore', place: 'place_store-a' } as const;

/** Small and mini sets in steel. */
export const SMALL_SETS: SetPlan[] = [
  { code: 'SFS-01', configuration: 'SFS', ...inStore, hoursInStep: 30, useByDays: 170 },
  // short in class 4 only: may go, marked
  {
    code: 'SFS-02',
    configuration: 'SFS',
    ...inStore,
    hoursInStep: 76,
    useByDays: 165,
    short: { 'PT-X-CUTTER': { found: 0 }, 'CR-W-35': { found: 2 } },
  },
  // short in class 1: the double-ended sleeve; waits for a decision
  {
    code: 'SFS-03',
    configuration: 'SFS',
    step: 'shortAwaitingDecision',
    hoursInStep: 3,
    place: 'place_bench',
    countedBy: 'person_tomas-birkett',
    short: {
      'CR-S-E35': { found: 0, unsound: 1, condition: 'boreWorn' },
      'CR-C35-16': { found: 3 },
      'CR-C35-18': { found: 5 },
    },
  },
  // twins whose codes read the same upside down; 09 holds a plate of 06
  {
    code: 'SFS-06',
    configuration: 'SFS',
    ...inStore,
    hoursInStep: 52,
    useByDays: 168,
    short: { 'CR-P35-H-07': { found: 1 } },
  },
  {
    code: 'SFS-09',
    configuration: 'SFS',
    step: 'onBench',
    hoursInStep: 1,
    readyInMinutes: 330,
    place: 'place_bench',
    foreign: [
      { code: 'CR-P35-H-07', quantity: 1, note: 'One more than the set holds: probably from SFS-06.' },
      { code: 'SF-C35-16', quantity: 2, note: 'Titanium screws among steel ones.' },
    ],
  },

  // the night case: 01 is made up to the version without a limiter, 05 is whole and promised to the morning, 07 is back at 05:40
  {
    code: 'SFL-01',
    configuration: 'SFL',
    version: 1,
    ...inStore,
    hoursInStep: 20,
    useByDays: 175,
  },
  { code: 'SFL-05', configuration: 'SFL', ...inStore, hoursInStep: 44, useByDays: 172 },
  {
    code: 'SFL-07',
    configuration: 'SFL',
    step: 'washing',
    hoursInStep: 1,
    ready: [1, '05:40'],
    place: 'place_dirty-side',
  },
  {
    code: 'SFL-02',
    configuration: 'SFL',
    step: 'held',
    heldBecause: 'wrapWetTornOrUnsealed',
    hoursInStep: 5,
    place: 'place_held-shelf',
    useByDays: 178,
  },
  // made up to the version before, with the sleeve that does not sit in two-zone holes
  {
    code: 'SFL-03',
    configuration: 'SFL',
    version: 1,
    step: 'comingBack',
    hoursInStep: 2,
    ready: [1, '13:00'],
    place: null,
    short: { 'CR-S-E35': { found: 0 } },
  },

  {
    code: 'MFS-01',
    configuration: 'MFS',
    step: 'inSterileStore',
    hoursInStep: 120,
    useByDays: 150,
    place: 'place_store-c',
    short: { 'CR-S-I15': { found: 0 } },
  },
  // class 1 short: no sound hexagon 1.5 screwdriver
  {
    code: 'MFS-02',
    configuration: 'MFS',
    step: 'held',
    heldBecause: 'mustHaveDamaged',
    hoursInStep: 26,
    place: 'place_held-shelf',
    short: { 'CR-D-H15': { found: 0, unsound: 2, condition: 'blunt' } },
  },
  {
    code: 'M27-01',
    configuration: 'M27',
    step: 'inSterileStore',
    hoursInStep: 200,
    useByDays: 130,
    place: 'place_store-c',
  },
  // two look-alikes by code; this one is short of a back-up
  {
    code: 'M27-07',
    configuration: 'M27',
    step: 'inSterileStore',
    hoursInStep: 310,
    useByDays: 120,
    place: 'place_store-c',
    short: { 'CR-T-HA27': { found: 0, unsound: 1, condition: 'blunt' } },
  },
];

import type { SetPlan } from './setPlan';

const inStore = { step: 'inSterileStore', place: 'place_store-b' } as const;

/** Small and mini sets in titanium, and those for one region each. */
export const TITANIUM_SETS: SetPlan[] = [
  {
    code: 'SFT-01',
    configuration: 'SFT',
    step: 'awaitingAcceptance',
    hoursInStep: 1,
    readyInMinutes: 90,
    place: null,
  },
  // short in class 2: no bit for plain screws but the pouch that travels with it, and a screw length has run low
  {
    code: 'SFT-02',
    configuration: 'SFT',
    ...inStore,
    hoursInStep: 60,
    useByDays: 160,
    short: {
      'SF-B25-125': { found: 0 },
      'SF-B28-150': { found: 1, unsound: 1, condition: 'blunt' },
      'SF-L35-24': { found: 1 },
    },
    sentShort: {
      standIns: ['CR-B25-110'],
      by: ['person_maurice-oduya'],
      reason:
        'No bit of the set’s own maker on the shelf; the steel maker’s of the same diameter goes with it.',
    },
  },
  {
    code: 'SFT-03',
    configuration: 'SFT',
    step: 'inTheatre',
    hoursInStep: 2,
    ready: [1, '09:30'],
    place: null,
  },

  { code: 'DRT-01', configuration: 'DRT', ...inStore, hoursInStep: 18, useByDays: 178 },
  // lengths run low just where distal radius screws lie
  {
    code: 'DRT-02',
    configuration: 'DRT',
    ...inStore,
    hoursInStep: 40,
    useByDays: 171,
    short: { 'SF-L27-20': { found: 2 }, 'SF-L27-22': { found: 1 }, 'SF-L27-18': { found: 2 } },
  },
  // the right plates have gone, and nothing stands in for the longer one: it waits on the bench for them
  {
    code: 'DRT-03',
    configuration: 'DRT',
    step: 'onBench',
    hoursInStep: 5,
    place: 'place_bench',
    short: { 'SF-DR27-R-03': { found: 0 }, 'SF-DR27-R-04': { found: 0 } },
  },
  // no sound threaded sleeve
  {
    code: 'DRT-04',
    configuration: 'DRT',
    step: 'shortAwaitingDecision',
    hoursInStep: 6,
    place: 'place_bench',
    countedBy: 'person_jolene-stott',
    short: { 'SF-S-T27': { found: 0, unsound: 2, condition: 'boreWorn' } },
  },

  {
    code: 'DTT-01',
    configuration: 'DTT',
    ...inStore,
    hoursInStep: 90,
    useByDays: 155,
    short: { 'SF-L35-36': { found: 1 }, 'SF-L35-38': { found: 2 } },
  },
  {
    code: 'DTT-02',
    configuration: 'DTT',
    step: 'inSteriliser',
    hoursInStep: 1,
    readyInMinutes: 130,
    place: null,
  },

  { code: 'PHT-01', configuration: 'PHT', ...inStore, hoursInStep: 210, useByDays: 140 },
  {
    code: 'PHT-02',
    configuration: 'PHT',
    step: 'comingBack',
    hoursInStep: 1,
    ready: [1, '16:00'],
    place: null,
  },
  // on loan for one week; counted on arrival
  {
    code: 'PHT-L1',
    configuration: 'PHT',
    step: 'awaitingAcceptance',
    hoursInStep: 1,
    readyInMinutes: 45,
    place: 'place_loan-bay',
    owner: 'loan',
    ownerNote: 'Sallowfen Surgical, LN-4471, back by the end of next week',
    countedBy: 'person_dilys-harrow',
  },
  {
    code: 'CLO-L2',
    configuration: 'CLO',
    step: 'held',
    heldBecause: 'loanWithoutDeclaration',
    hoursInStep: 4,
    place: 'place_loan-bay',
    owner: 'loan',
    ownerNote: 'Sallowfen Surgical, LN-4472, came without a decontamination declaration',
    countedBy: 'person_kofi-brandreth',
  },
  {
    code: 'PHT-L4',
    configuration: 'PHT',
    step: 'held',
    heldBecause: 'loanWithoutDeclaration',
    hoursInStep: 1,
    place: 'place_loan-bay',
    owner: 'loan',
    ownerNote: 'Sallowfen Surgical, LN-4475, just arrived and not counted yet',
    neverCounted: true,
  },

  { code: 'DFB-01', configuration: 'DFB', ...inStore, hoursInStep: 70, useByDays: 158 },
  {
    code: 'DFB-02',
    configuration: 'DFB',
    ...inStore,
    hoursInStep: 33,
    useByDays: 3,
  },
  {
    code: 'DFB-03',
    configuration: 'DFB',
    step: 'packed',
    hoursInStep: 1,
    readyInMinutes: 240,
    place: 'place_bench',
  },

  {
    code: 'CLO-01',
    configuration: 'CLO',
    ...inStore,
    hoursInStep: 130,
    useByDays: 150,
    short: { 'SF-OL35-R-05': { found: 0 } },
  },
  {
    code: 'CLO-02',
    configuration: 'CLO',
    step: 'onBench',
    hoursInStep: 2,
    readyInMinutes: 400,
    place: 'place_bench',
    short: { 'SF-OL35-R-03': { found: 0 }, 'SF-OL35-R-05': { found: 0 }, 'PT-W-16-150': { found: 2 } },
  },

  {
    code: 'MFT-01',
    configuration: 'MFT',
    ...inStore,
    hoursInStep: 240,
    useByDays: 120,
    short: { 'SF-L20-16': { found: 1 }, 'SF-L20-18': { found: 1 } },
  },

  { code: 'CAN-01', configuration: 'CAN', ...inStore, hoursInStep: 55, useByDays: 160 },
  // held after an indicator failed
  {
    code: 'CAN-02',
    configuration: 'CAN',
    step: 'held',
    heldBecause: 'indicatorOrCycleFailed',
    hoursInStep: 12,
    place: 'place_held-shelf',
  },
];

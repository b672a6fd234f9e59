import type { SetPlan } from './setPlan';

/** Every set of the demo as it is when it is loaded. */
export const SETS: SetPlan[] = [
  {
    code: 'SFS-01',
    configuration: 'SFS',
    step: 'inSterileStore',
    hoursInStep: 30,
    useByDays: 170,
    place: 'place_store-a',
  },
  {
    code: 'SFL-01',
    configuration: 'SFL',
    step: 'inSterileStore',
    hoursInStep: 20,
    useByDays: 175,
    place: 'place_store-a',
    short: { 'PT-L-1500': { found: 0 } },
  },
  {
    code: 'SFL-05',
    configuration: 'SFL',
    step: 'inSterileStore',
    hoursInStep: 44,
    useByDays: 172,
    place: 'place_store-a',
  },
  {
    code: 'SFL-07',
    configuration: 'SFL',
    step: 'washing',
    hoursInStep: 1,
    ready: [1, '05:40'],
    place: 'place_dirty-side',
  },
];

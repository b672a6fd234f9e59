import { LARGE_SETS } from './largeSets';
import type { SetPlan } from './setPlan';
import { SMALL_SETS } from './smallSets';
import { TITANIUM_SETS } from './titaniumSets';

/** Every set of the demo as it is when it is loaded. */
export const SETS: SetPlan[] = [...SMALL_SETS, ...TITANIUM_SETS, ...LARGE_SETS];

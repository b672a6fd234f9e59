import type { ConfigurationPlan } from './layout';
import { SMALL_STEEL, SMALL_STEEL_LOCKING } from './smallSteel';

/** Every configuration of the demo. */
export const CONFIGURATIONS: ConfigurationPlan[] = [SMALL_STEEL, SMALL_STEEL_LOCKING];

import { LARGE } from './large';
import type { ConfigurationPlan } from './layout';
import { MINI } from './mini';
import { SMALL_STEEL, SMALL_STEEL_LOCKING } from './smallSteel';
import { CANNULATED, SMALL_TITANIUM } from './smallTitanium';
import { WITHOUT_IMPLANTS } from './withoutImplants';

/** Every configuration of the demo. */
export const CONFIGURATIONS: ConfigurationPlan[] = [
  SMALL_STEEL,
  SMALL_STEEL_LOCKING,
  ...SMALL_TITANIUM,
  ...MINI,
  ...LARGE,
  CANNULATED,
  ...WITHOUT_IMPLANTS,
];

import type { CasePlan } from './casePlan';
import { CASES_ABOUT_CHAINS } from './casesAboutChains';
import { CASES_ABOUT_SHORTAGES } from './casesAboutShortages';
import { CASES_OF_EACH_KIND } from './casesOfEachKind';
import { CASES_ON_THE_WAY } from './casesOnTheWay';
import { CASES_WITH_ANATOMIC_PLATES } from './casesWithAnatomicPlates';
import { IN_THEATRE_NOW } from './inTheatreNow';
import { NIGHT_AND_MORNING } from './nightAndMorning';

/** Every case of the demo, over the coming week. */
export const CASES: CasePlan[] = [
  ...NIGHT_AND_MORNING,
  ...CASES_OF_EACH_KIND,
  ...CASES_WITH_ANATOMIC_PLATES,
  ...CASES_ABOUT_SHORTAGES,
  ...CASES_ABOUT_CHAINS,
  ...CASES_ON_THE_WAY,
  ...IN_THEATRE_NOW,
];

import type { FitException, FitRule } from '@/lib/fit/rule';
import { countersinks, glides, measures, pilots, taps } from './drilling';
import { joins, limits, sides, turns, wearsWith } from './driving';
import { seats } from './seats';
import { guides, passes } from './sleeves';

/**
 * The general rules every hospital starts with. They hold for any catalogue; none names an item of the demo.
 * Each has a fits, a does-not-fit and a not-established case in tests/rules.
 */
export const starterRules: FitRule[] = [
  ...seats,
  ...guides,
  ...passes,
  ...pilots,
  ...glides,
  ...taps,
  ...countersinks,
  ...measures,
  ...turns,
  ...joins,
  ...limits,
  ...wearsWith,
  ...sides,
];

/** No pair of designs is excepted until a hospital says so. */
export const starterExceptions: FitException[] = [];

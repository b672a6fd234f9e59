import { type FitException, type FitRule, fitException, fitRule } from '@/lib/fit/rule';
import type { fitExceptions, fitRules } from '../schema';

/** A row as a fit rule, parsed: what the database holds is checked on the way in. */
export const ruleFromRow = (row: typeof fitRules.$inferSelect): FitRule => fitRule.parse(row);

/** A row as a named exception, parsed. */
export const exceptionFromRow = (row: typeof fitExceptions.$inferSelect): FitException =>
  fitException.parse(row);

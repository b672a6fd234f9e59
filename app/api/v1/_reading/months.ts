import { z } from 'zod';
import { PERIOD_MONTHS } from '@/lib/review/period';

/** How far back a report goes, behind the `?` of its address; `askedMonths` makes a number of it. */
export const monthsAsked = {
  months: z
    .enum(PERIOD_MONTHS.map(String) as [string, ...string[]])
    .default('24')
    .describe('How many months back.'),
};

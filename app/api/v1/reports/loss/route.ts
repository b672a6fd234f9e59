import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { loadLossTables } from '@/app/reports/loss/loss-tables';
import { PERIOD_MONTHS } from '@/lib/review/period';

const asked = {
  months: z
    .enum(PERIOD_MONTHS.map(String) as [string, ...string[]])
    .default('24')
    .describe('How many months back.'),
};

/** What past its use-by, not found and repaired cost, and how long pieces last, as tables and figure by figure. */
export const GET = oneOf('GET /api/v1/reports/loss', { what: 'report', query: asked }, ({ db, query }) =>
  loadLossTables(db, PERIOD_MONTHS.find((one) => String(one) === query.months) ?? 24, now()),
);

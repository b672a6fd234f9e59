import { now } from '@/app/_server/clock';
import { monthsAsked } from '@/app/api/v1/_reading/months';
import { oneOf } from '@/app/api/v1/_reading/one';
import { loadLossTables } from '@/app/reports/loss/loss-tables';
import { askedMonths } from '@/lib/review/period';

/** What past its use-by, not found and repaired cost, and how long pieces last, as tables and figure by figure. */
export const GET = oneOf(
  'GET /api/v1/reports/loss',
  { what: 'report', query: monthsAsked },
  ({ db, query }) => loadLossTables(db, askedMonths(query.months), now()),
);

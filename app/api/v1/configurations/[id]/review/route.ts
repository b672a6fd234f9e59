import { now } from '@/app/_server/clock';
import { monthsAsked } from '@/app/api/v1/_reading/months';
import { oneOf } from '@/app/api/v1/_reading/one';
import { reviewConfiguration } from '@/db/queries/review/configurationReview';
import { askedMonths, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';

/** The review of a configuration: what of it was used, never used and short in past cases. */
export const GET = oneOf(
  'GET /api/v1/configurations/[id]/review',
  { what: 'configuration in force', query: monthsAsked },
  async ({ db, params, query }) => {
    const at = now();
    const months = askedMonths(query.months);
    const period = periodUntil(wallClock(at).date, months);
    const review = await reviewConfiguration(db, params.id, period, at);
    if (review === null) return null;
    const { cases, configuration, inForce, draft, ...found } = review;
    return {
      period,
      cases: cases.length,
      version: inForce.version,
      draftVersion: draft?.version ?? null,
      ...found,
    };
  },
);

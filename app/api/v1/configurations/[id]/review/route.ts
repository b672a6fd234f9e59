import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { reviewConfiguration } from '@/db/queries/review/configurationReview';
import { PERIOD_MONTHS, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';

const asked = {
  months: z
    .enum(PERIOD_MONTHS.map(String) as [string, ...string[]])
    .default('24')
    .describe('How many months back.'),
};

/** The review of a configuration: what of it was used, never used and short in past cases. */
export const GET = oneOf(
  'GET /api/v1/configurations/[id]/review',
  { what: 'configuration in force', query: asked },
  async ({ db, params, query }) => {
    const at = now();
    const months = PERIOD_MONTHS.find((one) => String(one) === query.months) ?? 24;
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

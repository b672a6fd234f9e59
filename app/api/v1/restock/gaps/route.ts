import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { urgentGaps } from '@/db/queries/restock/gaps';

const asked = {
  days: z.enum(['7', '14', '28']).default('14').describe('How many days ahead is looked.'),
};

/** What confirmed plans need that neither sets nor the shelf have. */
export const GET = oneOf(
  'GET /api/v1/restock/gaps',
  { what: 'report', query: asked },
  async ({ db, query }) => {
    const { cases, gaps } = await urgentGaps(db, now(), Number(query.days));
    return { cases, gaps };
  },
);

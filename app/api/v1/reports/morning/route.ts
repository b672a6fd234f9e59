import { reportOfDay } from '@/app/_server/day-report';
import { oneOf } from '@/app/api/v1/_reading/one';
import { plainDate } from '@/lib/quantities/plainDate';

const asked = {
  day: plainDate.optional().describe('The day, as YYYY-MM-DD; the one it is for when left out.'),
};

/** The morning report of a day as things stand now, with what changed since you marked it as seen. */
export const GET = oneOf(
  'GET /api/v1/reports/morning',
  { what: 'report', query: asked },
  async ({ db, person, query }) => {
    const { today, report, changed } = await reportOfDay({ db, person }, 'morning', query.day ?? null);
    return { today, report, changed };
  },
);

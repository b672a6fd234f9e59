import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { listCases } from '@/db/queries/cases';
import { sessionsOn } from '@/db/queries/theatre/theatreSessions';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';

const asked = { from: plainDate.optional().describe('The first day, as YYYY-MM-DD; today when left out.') };

/** Seven days of the theatre list: its cases and the sessions they lie in. */
export const GET = oneOf(
  'GET /api/v1/theatre-list/week',
  { what: 'week', query: asked },
  async ({ db, query }) => {
    const from = query.from ?? wallClock(now()).date;
    const before = addDays(from, 7);
    const [cases, sessions] = await Promise.all([listCases(db, from, before), sessionsOn(db, from, before)]);
    return { from, before, cases, sessions };
  },
);

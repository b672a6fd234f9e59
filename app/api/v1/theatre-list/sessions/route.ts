import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { addSessions } from '@/db/operations/theatre/add-sessions';
import { sessionsOn } from '@/db/queries/theatre/theatreSessions';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { sessionRequest } from '@/lib/theatre/session';

/** Enters when a theatre works, on one day or week after week. */
export const POST = endpoint(
  'POST /api/v1/theatre-list/sessions',
  { body: sessionRequest },
  async ({ db, person, request }) => {
    const body = await readBody(request, sessionRequest);
    if (!body.ok) return body.response;
    return outcomeAnswer(await addSessions({ db, person, now: now(), newId, asked: body.value }));
  },
);

const asked = {
  from: plainDate.optional().describe('The first day, as YYYY-MM-DD; today when left out.'),
  before: plainDate.optional().describe('The day after the last; four weeks on when left out.'),
};

/** Sessions of the theatres from one day up to another. */
export const GET = listOf('GET /api/v1/theatre-list/sessions', {
  query: asked,
  rows: ({ db, query }) => {
    const from = query.from ?? wallClock(now()).date;
    return sessionsOn(db, from, query.before ?? addDays(from, 28));
  },
  keyOf: ({ date, startsAt, id }) => [date, startsAt, id],
});

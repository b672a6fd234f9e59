import { z } from 'zod';
import { bookNewCase } from '@/app/_server/book-new-case';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { readBody } from '@/app/_server/outcome-answer';
import { resultAnswer } from '@/app/_server/result-answer';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { casesAfter, placeOfCase } from '@/db/queries/api/casesAfter';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { bookingRequest } from '@/lib/theatre/booking';
import { wallClock } from '@/lib/theatre/localTime';

const DAYS_AHEAD = 28;
const asked = {
  from: plainDate.optional().describe('The first day, as YYYY-MM-DD; today when left out.'),
  before: plainDate.optional().describe('The day after the last; four weeks on when left out.'),
  cancelled: z.literal('yes').optional().describe('Those that were cancelled too.'),
};

/** The theatre list from one day up to another, in the order of day and time. */
export const GET = pagesOf('GET /api/v1/cases', {
  query: asked,
  rows: ({ db, query }, place) => {
    const from = query.from ?? wallClock(now()).date;
    const before = query.before ?? addDays(from, DAYS_AHEAD);
    return casesAfter(db, { from, before, cancelledToo: query.cancelled === 'yes' }, place);
  },
  keyOf: placeOfCase,
});

/** Books a case; a saved start it is booked from gives it the first draft of its plan. */
export const POST = endpoint(
  'POST /api/v1/cases',
  { body: bookingRequest },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return resultAnswer(await bookNewCase({ db, person }, body.value), 201);
  },
);

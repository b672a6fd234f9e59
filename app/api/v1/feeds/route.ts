import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { makeFeed } from '@/db/operations/calendars/make-feed';
import { newToken } from '@/db/secrets';
import { newFeed } from '@/lib/calendar/feed';

/** Makes a calendar address; the answer is the one time its secret is told. */
export const POST = endpoint(
  'POST /api/v1/feeds',
  { answers: 'secret', body: newFeed },
  async ({ db, person, request }) => {
    const body = await readBody(request, z.looseObject({}));
    if (!body.ok) return body.response;
    return outcomeAnswer(await makeFeed({ db, now: now(), newId, newToken, person, feed: body.value }), 201);
  },
);

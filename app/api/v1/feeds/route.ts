import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { listOf } from '@/app/api/v1/_reading/list';
import { makeFeed } from '@/db/operations/calendars/make-feed';
import { allFeeds, ownFeeds } from '@/db/queries/calendars/feeds';
import { newToken } from '@/db/secrets';
import { newFeed } from '@/lib/calendar/feed';
import { may } from '@/lib/people/permissions';

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

/** Your calendar addresses, and to an administrator those of everybody; never what opens them. */
export const GET = listOf('GET /api/v1/feeds', {
  rows: ({ db, person }) => (may(person, 'managePeople') ? allFeeds(db) : ownFeeds(db, person.id)),
  keyOf: ({ id }) => [id],
});

import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { addSessions } from '@/db/operations/theatre/add-sessions';
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

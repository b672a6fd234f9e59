import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { readBody } from '@/app/_server/outcome-answer';
import { placeOf } from '@/app/_server/place';
import { signInAnswer } from '@/app/_server/sign-in-answer';
import { openEndpoint } from '@/app/_server/threshold';
import { signIn } from '@/db/operations/people/sign-in';
import { claimedByName } from '@/db/queries/credentials';
import { newToken } from '@/db/secrets';
import { peopleWords } from '@/lib/wording/people';

const members = z.strictObject({ name: z.string().max(200), password: z.string().max(1000) });

/** Signs a person in by name and password; the session this browser had ends. */
export const POST = openEndpoint(
  'POST /api/v1/people/sign-in',
  { body: members },
  async ({ db, session, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const claimed = await claimedByName(db, body.value.name);
    const outcome = await signIn({
      db,
      now: now(),
      newId,
      newToken,
      claimed,
      given: { password: body.value.password },
      place: await placeOf(claimed.person),
      present: session?.session.id ?? null,
    });
    return signInAnswer(outcome, peopleWords.wrongName);
  },
);

import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { readBody } from '@/app/_server/outcome-answer';
import { placeOf } from '@/app/_server/place';
import { problemResponse } from '@/app/_server/problem-response';
import { signInAnswer } from '@/app/_server/sign-in-answer';
import { openEndpoint } from '@/app/_server/threshold';
import { signIn } from '@/db/operations/people/sign-in';
import { claimedByBadge } from '@/db/queries/credentials';
import { newToken } from '@/db/secrets';
import { badgeCode } from '@/lib/people/badge';
import { peopleWords } from '@/lib/wording/people';

const members = z.strictObject({ badge: z.string().max(200), pin: z.string().max(40) });

/** A badge and its PIN at an enrolled workstation: that person acts here from now on, whoever did before. */
export const POST = openEndpoint(
  'POST /api/v1/people/badge',
  { body: members },
  async ({ db, session, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const claimed = await claimedByBadge(db, badgeCode(body.value.badge) ?? '');
    const place = await placeOf(claimed.person);
    if (place.workstationId === null) {
      const message = peopleWords.notAWorkstation;
      return problemResponse(403, 'Not permitted', [{ path: [], code: 'not-a-workstation', message }]);
    }
    const present = session?.session.id ?? null;
    const given = { pin: body.value.pin };
    const outcome = await signIn({ db, now: now(), newId, newToken, claimed, given, place, present });
    return signInAnswer(outcome, peopleWords.wrongBadge);
  },
);

import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { hospitalName } from '@/app/_server/hospital';
import { readBody } from '@/app/_server/outcome-answer';
import { placeOf } from '@/app/_server/place';
import { problemResponse } from '@/app/_server/problem-response';
import { refusedAnswer, signInAnswer } from '@/app/_server/sign-in-answer';
import { openEndpoint } from '@/app/_server/threshold';
import { nameFirstAdministrator } from '@/db/operations/people/name-first-administrator';
import { newToken } from '@/db/secrets';
import { peopleWords } from '@/lib/wording/people';

const text = z.string().max(1000);
const members = z.strictObject({ code: text, name: text, password: text });

/** Names the first administrator, with the code the server printed as it started. */
export const POST = openEndpoint(
  'POST /api/v1/people/first-run',
  { body: members },
  async ({ db, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const placeKey = (await placeOf(null)).key;
    const named = await nameFirstAdministrator({
      db,
      now: now(),
      newId,
      newToken,
      placeKey,
      hospital: hospitalName(),
      ...body.value,
    });
    if (named.ok) return signInAnswer(named, () => '');
    switch (named.because) {
      case 'invalid':
        return problemResponse(422, 'This can’t be taken as it is', named.problems);
      case 'over':
        return problemResponse(409, 'Not as it stands', [
          { path: [], code: 'over', message: peopleWords.firstRunOver },
        ]);
      case 'wrongCode':
        return refusedAnswer(named.check, peopleWords.wrongFirstCode);
    }
  },
);

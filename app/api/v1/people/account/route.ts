import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { hospitalName } from '@/app/_server/hospital';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { placeOf } from '@/app/_server/place';
import { ownSession } from '@/app/_server/session';
import { listOf } from '@/app/api/v1/_reading/list';
import { changePassword } from '@/db/operations/people/change-password';
import { changePin } from '@/db/operations/people/change-pin';
import { endSession } from '@/db/operations/people/end-session';
import { listOwnSessions } from '@/db/queries/peopleOnFile';
import { sessionId } from '@/lib/identity/ids';

const secret = z.string().max(1000);
const act = z.discriminatedUnion('act', [
  z.strictObject({ act: z.literal('password'), present: secret, next: secret }),
  z.strictObject({ act: z.literal('pin'), password: secret, pin: secret }),
  z.strictObject({ act: z.literal('endSession'), sessionId }),
]);

/** What a person does about their own secrets and sessions. */
export const POST = endpoint(
  'POST /api/v1/people/account',
  { answers: 'secret', body: act },
  async ({ db, person, session, request }) => {
    const body = await readBody(request, act);
    if (!body.ok) return body.response;
    const asked = body.value;
    const at = now();
    if (asked.act === 'endSession') {
      await endSession({ db, now: at, person, sessionId: asked.sessionId });
      return outcomeAnswer({ ok: true, value: null });
    }
    const placeKey = (await placeOf(person)).key;
    const common = { db, now: at, person, placeKey };
    return outcomeAnswer(
      asked.act === 'password'
        ? await changePassword({
            ...common,
            sessionId: ownSession({ session }),
            hospital: hospitalName(),
            present: asked.present,
            next: asked.next,
          })
        : await changePin({ ...common, password: asked.password, pin: asked.pin }),
    );
  },
);

/** Where you are signed in, the latest first. */
export const GET = listOf('GET /api/v1/people/account', {
  rows: ({ db, person }) => listOwnSessions(db, person.id, now()),
  keyOf: ({ beganAt, id }) => [beganAt, id],
  newestFirst: true,
});

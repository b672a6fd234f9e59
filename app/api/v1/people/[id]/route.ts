import { randomBytes } from 'node:crypto';
import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { oneOf } from '@/app/api/v1/_reading/one';
import type { AtPerson } from '@/db/operations/people/at-person';
import { changeRole } from '@/db/operations/people/change-role';
import { issueBadge } from '@/db/operations/people/issue-badge';
import { leavePerson } from '@/db/operations/people/leave-person';
import { resetPassword } from '@/db/operations/people/reset-password';
import { returnPerson } from '@/db/operations/people/return-person';
import { unlockPerson } from '@/db/operations/people/unlock-person';
import { withdrawBadge } from '@/db/operations/people/withdraw-badge';
import { listPeopleOnFile, waitsOf } from '@/db/queries/peopleOnFile';
import { newPassword } from '@/db/secrets';
import { personId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import { role } from '@/lib/people/role';

const act = z.discriminatedUnion('act', [
  z.strictObject({ act: z.literal('role'), role }),
  z.strictObject({ act: z.enum(['leave', 'return', 'password', 'badge', 'withdrawBadge', 'unlock']) }),
]);

/** What an administrator does about one person. A new password or badge code goes out once, with this answer. */
export const POST = endpoint(
  'POST /api/v1/people/[id]',
  { answers: 'secret', body: act },
  async ({ db, person, request, params }) => {
    const id = personId.safeParse(params.id);
    if (!id.success) return noSuch('person');
    const body = await readBody(request, act);
    if (!body.ok) return body.response;
    return outcomeAnswer(await done({ db, now: now(), person, personId: id.data }, body.value));
  },
);

/** What goes out once with the answer, where there is something. */
type Told = { firstPassword: string } | { code: string } | null;

async function done(at: AtPerson, asked: z.infer<typeof act>): Promise<Outcome<Told, never>> {
  const firstPassword = newPassword();
  switch (asked.act) {
    case 'role':
      return changeRole({ ...at, role: asked.role });
    case 'leave':
      return leavePerson(at);
    case 'return':
      return withPassword(await returnPerson({ ...at, firstPassword }), firstPassword);
    case 'password':
      return withPassword(await resetPassword({ ...at, firstPassword }), firstPassword);
    case 'badge':
      return issueBadge({ ...at, random: randomBytes(26) });
    case 'withdrawBadge':
      return withdrawBadge(at);
    case 'unlock':
      return unlockPerson(at);
  }
}

const withPassword = (
  outcome: Outcome<null, never>,
  firstPassword: string,
): Outcome<{ firstPassword: string }, never> =>
  outcome.ok ? { ok: true, value: { firstPassword } } : outcome;

/** One person with the ways in they have; never a secret. */
export const GET = oneOf('GET /api/v1/people/[id]', { what: 'person' }, async ({ db, params }) => {
  const found = (await listPeopleOnFile(db)).find(({ id }) => id === params.id);
  return found ? { ...found, waits: await waitsOf(db, found.id, now()) } : null;
});

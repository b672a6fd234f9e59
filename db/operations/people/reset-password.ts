import { hashSecret } from '@/db/secrets';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { peopleWords } from '@/lib/wording/people';
import { credentials } from '../../schema';
import { type AtPerson, atPerson, endSessionsOf } from './at-person';

/** Gives somebody who forgot theirs a password to change as they sign in; every session they have ends. */
export async function resetPassword(
  request: AtPerson & { firstPassword: string },
): Promise<Outcome<null, never>> {
  const { now, personId, firstPassword } = request;
  const passwordHash = await hashSecret(firstPassword);
  return atPerson(request, 'reset-password', async (write, whom) => {
    if (whom.leftAt !== null) return refused('frozen', peopleWords.hasLeft(whom.name));
    const kept = { passwordHash, mustChangePassword: true, changedAt: now };
    await write
      .insert(credentials)
      .values({ personId, ...kept })
      .onConflictDoUpdate({ target: credentials.personId, set: kept });
    await endSessionsOf(write, { personId, now });
    return { ok: true, value: { value: null, detail: {} } };
  });
}

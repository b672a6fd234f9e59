import { eq } from 'drizzle-orm';
import { hashSecret } from '@/db/secrets';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { peopleWords } from '@/lib/wording/people';
import { credentials, people } from '../../schema';
import { isNameTaken } from './add-person';
import { type AtPerson, atPerson } from './at-person';

/** Somebody who had left works here again, with a new password to be changed and no badge. */
export async function returnPerson(
  request: AtPerson & { firstPassword: string },
): Promise<Outcome<null, never>> {
  const { now, personId, firstPassword } = request;
  const passwordHash = await hashSecret(firstPassword);
  return atPerson(request, 'return-person', async (write, whom) => {
    if (whom.leftAt === null) return refused('frozen', peopleWords.isHere(whom.name));
    if (await isNameTaken(write, whom.name, personId)) {
      return refusedFor([{ path: [], code: 'name-taken', message: peopleWords.nameTaken(whom.name) }]);
    }
    await write.update(people).set({ leftAt: null }).where(eq(people.id, personId));
    const kept = { passwordHash, mustChangePassword: true, changedAt: now };
    await write
      .insert(credentials)
      .values({ personId, ...kept })
      .onConflictDoUpdate({ target: credentials.personId, set: kept });
    return { ok: true, value: { value: null, detail: {} } };
  });
}

import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { peopleWords } from '@/lib/wording/people';
import { credentials, people } from '../../schema';
import { type AtPerson, atPerson, endSessionsOf, isLastAdministrator } from './at-person';

/** Somebody works here no longer: their sessions end and nothing lets them in. What they did keeps their name. */
export function leavePerson(request: AtPerson): Promise<Outcome<null, never>> {
  const { now, personId } = request;
  return atPerson(request, 'leave-person', async (write, whom) => {
    if (whom.leftAt !== null) return refused('frozen', peopleWords.hasLeft(whom.name));
    if (await isLastAdministrator(write, personId)) return refused('frozen', peopleWords.lastAdministrator);
    await write.update(people).set({ leftAt: now }).where(eq(people.id, personId));
    await write
      .update(credentials)
      .set({ passwordHash: null, pinHash: null, badgeHash: null, changedAt: now })
      .where(eq(credentials.personId, personId));
    await endSessionsOf(write, { personId, now });
    return { ok: true, value: { value: null, detail: {} } };
  });
}

import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import type { Role } from '@/lib/people/role';
import { peopleWords } from '@/lib/wording/people';
import { people } from '../../schema';
import { type AtPerson, atPerson, isLastAdministrator } from './at-person';

/** Gives a person another role; what they may do follows at once, in every session they have. */
export function changeRole(request: AtPerson & { role: Role }): Promise<Outcome<null, never>> {
  const { personId, role } = request;
  return atPerson(request, 'change-role', async (write, whom) => {
    if (whom.leftAt !== null) return refused('frozen', peopleWords.hasLeft(whom.name));
    if (role !== 'administrator' && (await isLastAdministrator(write, personId)))
      return refused('frozen', peopleWords.lastAdministrator);
    await write.update(people).set({ role }).where(eq(people.id, personId));
    return { ok: true, value: { value: null, detail: { from: whom.role, to: role } } };
  });
}

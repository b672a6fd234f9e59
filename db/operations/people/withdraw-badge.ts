import { eq } from 'drizzle-orm';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { peopleWords } from '@/lib/wording/people';
import { credentials } from '../../schema';
import { type AtPerson, atPerson } from './at-person';

/** A badge that was lost lets nobody in from now on. */
export function withdrawBadge(request: AtPerson): Promise<Outcome<null, never>> {
  const { now, personId } = request;
  return atPerson(request, 'withdraw-badge', async (write, whom) => {
    const [kept] = await write.select().from(credentials).where(eq(credentials.personId, personId));
    if (!kept?.badgeHash) return refused('frozen', peopleWords.hasNoBadge(whom.name));
    await write
      .update(credentials)
      .set({ badgeHash: null, changedAt: now })
      .where(eq(credentials.personId, personId));
    return { ok: true, value: { value: null, detail: {} } };
  });
}

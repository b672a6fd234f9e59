import { hashCode } from '@/db/secrets';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { newBadgeCode } from '@/lib/people/badge';
import { peopleWords } from '@/lib/wording/people';
import { credentials } from '../../schema';
import { type AtPerson, atPerson } from './at-person';

/**
 * Issues a badge in place of any before it. Its code goes out once, to be printed; kept is its hash, so that neither
 * the store nor the ledger can be read for badges.
 */
export function issueBadge(
  request: AtPerson & { random: Uint8Array },
): Promise<Outcome<{ code: string }, never>> {
  const { now, personId, random } = request;
  return atPerson(request, 'issue-badge', async (write, whom) => {
    if (whom.leftAt !== null) return refused('frozen', peopleWords.hasLeft(whom.name));
    const code = newBadgeCode(random);
    const kept = { badgeHash: hashCode(code), changedAt: now };
    await write
      .insert(credentials)
      .values({ personId, mustChangePassword: false, ...kept })
      .onConflictDoUpdate({ target: credentials.personId, set: kept });
    return { ok: true, value: { value: { code }, detail: {} } };
  });
}

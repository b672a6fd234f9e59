import { and, eq, isNull } from 'drizzle-orm';
import type { TokenId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { tokenWords as words } from '@/lib/wording/tokens';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { apiTokens } from '../../schema';

interface RevokeToken {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  tokenId: TokenId;
}

/** Revokes a token for good, from this moment on. Revoked twice, it is revoked once. */
export async function revokeToken({ db, now, person, tokenId }: RevokeToken): Promise<Outcome<null, never>> {
  if (!may(person, 'manageTokens')) return refused('notPermitted', words.mayNot(person.name));
  return db.tx(async (write) => {
    const [token] = await write.select().from(apiTokens).where(eq(apiTokens.id, tokenId));
    if (!token) return refused('notFound', words.noSuchToken);
    if (token.revokedAt !== null) return { ok: true, value: null };
    await write
      .update(apiTokens)
      .set({ revokedAt: now, revokedBy: person.id })
      .where(and(eq(apiTokens.id, tokenId), isNull(apiTokens.revokedAt)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'revoke-token',
      subjectKind: 'token',
      subjectId: tokenId,
      detail: { actsAs: token.personId, name: token.name },
    });
    return { ok: true, value: null };
  });
}

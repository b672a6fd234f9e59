import { desc, eq, sql } from 'drizzle-orm';
import { hashCode } from '@/db/secrets';
import { type TokenId, tokenId } from '@/lib/identity/ids';
import type { Act } from '@/lib/people/permissions';
import { scopeOf } from '@/lib/people/tokens';
import type { Database } from '../../client';
import { prepared } from '../../prepared';
import { mayRead, type Reading } from '../../reader';
import { apiTokens, people } from '../../schema';
import { type Person, personFromRow } from '../people';

/** A token as it is kept, and what it lets its person do as their role stands now. Never its secret. */
export interface TokenOnFile {
  id: TokenId;
  name: string;
  /** Whom it acts for, within `scope`. */
  person: Person & { scope: Act[] };
  personLeft: boolean;
  issuedAt: string;
  expiresAt: string;
  lastUsedAt: string | null;
  revokedAt: string | null;
}

const tokenByHash = prepared((read) =>
  read
    .select({ token: apiTokens, person: people })
    .from(apiTokens)
    .innerJoin(people, eq(people.id, apiTokens.personId))
    .where(eq(apiTokens.tokenHash, sql.placeholder('tokenHash')))
    .prepare(),
);

/** The token a secret stands for, good or not. Nobody is known yet, so it is asked for nobody. */
export async function tokenOfSecret(
  { read }: Pick<Database, 'read'>,
  secret: string,
): Promise<TokenOnFile | null> {
  const row = tokenByHash(read).get({ tokenHash: hashCode(secret) });
  return row ? onFile(row) : null;
}

/** Every token ever issued, the newest first. */
export async function listTokens(db: Reading): Promise<TokenOnFile[]> {
  mayRead(db, 'manageTokens');
  const rows = await db.read
    .select({ token: apiTokens, person: people })
    .from(apiTokens)
    .innerJoin(people, eq(people.id, apiTokens.personId))
    .orderBy(desc(apiTokens.issuedAt), desc(apiTokens.id));
  return rows.map(onFile);
}

function onFile({
  token,
  person: row,
}: {
  token: typeof apiTokens.$inferSelect;
  person: typeof people.$inferSelect;
}): TokenOnFile {
  const person = personFromRow(row);
  return {
    id: tokenId.parse(token.id),
    name: token.name,
    person: { ...person, scope: scopeOf(person, token.scope) },
    personLeft: row.leftAt !== null,
    issuedAt: token.issuedAt,
    expiresAt: token.expiresAt,
    lastUsedAt: token.lastUsedAt,
    revokedAt: token.revokedAt,
  };
}

import { and, eq, isNull, lt, or } from 'drizzle-orm';
import type { TokenId } from '@/lib/identity/ids';
import type { Database } from '../../client';
import { apiTokens } from '../../schema';

/** Notes that a token was used. Time never goes back. */
export async function noteTokenUse({
  db,
  tokenId,
  usedAt,
}: {
  db: Pick<Database, 'tx'>;
  tokenId: TokenId;
  usedAt: string;
}): Promise<void> {
  await db.tx(async (write) => {
    await write
      .update(apiTokens)
      .set({ lastUsedAt: usedAt })
      .where(
        and(eq(apiTokens.id, tokenId), or(isNull(apiTokens.lastUsedAt), lt(apiTokens.lastUsedAt, usedAt))),
      );
  });
}

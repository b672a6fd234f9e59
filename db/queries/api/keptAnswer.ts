import { and, eq, gte } from 'drizzle-orm';
import { KEPT_FOR_MS, type KeyedWrite } from '../../answeredOnce';
import type { Database } from '../../client';
import { keptAnswers } from '../../schema';

/** What was answered to this key of this sender within a day; `null` where it is new. Whose it is, is in the key. */
export async function keptAnswer(
  { read }: Pick<Database, 'read'>,
  { sender, keyHash, at }: KeyedWrite,
): Promise<{ requestHash: string; status: number; body: unknown } | null> {
  const since = new Date(Date.parse(at) - KEPT_FOR_MS).toISOString();
  const [row] = await read
    .select()
    .from(keptAnswers)
    .where(
      and(eq(keptAnswers.sender, sender), eq(keptAnswers.keyHash, keyHash), gte(keptAnswers.keptAt, since)),
    );
  return row ? { requestHash: row.requestHash, status: row.status, body: row.body } : null;
}

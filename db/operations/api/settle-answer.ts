import { and, eq } from 'drizzle-orm';
import { type KeyedWrite, keptBody } from '../../answeredOnce';
import type { Database } from '../../client';
import { keptAnswers } from '../../schema';

/**
 * Puts the very answer in the place of what its work kept. A write that was refused after all is forgotten, so that it can
 * be sent again. Where nothing was kept, nothing was done, and nothing is.
 */
export async function settleAnswer({
  db,
  write,
  answer,
}: {
  db: Pick<Database, 'tx'>;
  write: KeyedWrite;
  answer: { status: number; body: unknown } | null;
}): Promise<void> {
  const itsOwn = and(eq(keptAnswers.sender, write.sender), eq(keptAnswers.keyHash, write.keyHash));
  await db.tx(async (queries) => {
    if (answer === null) await queries.delete(keptAnswers).where(itsOwn);
    else
      await queries
        .update(keptAnswers)
        .set({ status: answer.status, body: keptBody(answer.body) })
        .where(itsOwn);
  });
}

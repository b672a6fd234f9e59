import { desc } from 'drizzle-orm';
import type { Database } from '../client';
import { ledger } from '../schema';

/**
 * The hash of the newest ledger entry, or `null` while there is none. Every write appends to the ledger in its own
 * transaction, so what was worked out under one head holds for as long as the head is the same.
 */
export async function ledgerHead({ read }: Pick<Database, 'read'>): Promise<string | null> {
  const [last] = await read.select({ hash: ledger.hash }).from(ledger).orderBy(desc(ledger.seq)).limit(1);
  return last?.hash ?? null;
}

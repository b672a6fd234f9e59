import { desc } from 'drizzle-orm';
import { mayRead, type Reading } from '../reader';
import { ledger } from '../schema';

/**
 * The hash of the newest ledger entry, or `null` while there is none. Every write appends to the ledger in its own
 * transaction, so what was worked out under one head holds for as long as the head is the same.
 */
export async function ledgerHead(db: Reading): Promise<string | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [last] = await read.select({ hash: ledger.hash }).from(ledger).orderBy(desc(ledger.seq)).limit(1);
  return last?.hash ?? null;
}

/** The newest entry's number and hash, as they are printed on paper and written outside; `null` while there is none. */
export async function newestEntry(db: Reading): Promise<{ seq: number; hash: string } | null> {
  mayRead(db, 'readHospital');
  const [last] = await db.read
    .select({ seq: ledger.seq, hash: ledger.hash })
    .from(ledger)
    .orderBy(desc(ledger.seq))
    .limit(1);
  return last ?? null;
}

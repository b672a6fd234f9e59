import { and, desc, eq, gt, lte, notInArray } from 'drizzle-orm';
import { ACTS_WITHOUT_COST, BOOKKEEPING_ACTS } from '@/lib/ledger/effect';
import type { Queries } from '../client';
import { mayRead, type Reading } from '../reader';
import { ledger } from '../schema';

/** The newest entry's number and hash, as they are printed on paper and written outside; `null` while there is none. */
export async function newestEntry(
  db: Reading,
): Promise<{ seq: number; hash: string; enteredAt: string } | null> {
  mayRead(db, 'readHospital');
  const [last] = await db.read
    .select({ seq: ledger.seq, hash: ledger.hash, enteredAt: ledger.enteredAt })
    .from(ledger)
    .orderBy(desc(ledger.seq))
    .limit(1);
  return last ?? null;
}

/** Of each kind of looking, the entries looked at so far: they never change, so only newer ones are read again. */
const looked = new WeakMap<Queries, Map<string, { seq: number; hash: string; change: string | null }>>();

/**
 * The hash of the newest entry that can change a kit or how a set stands, `null` while there is none. Every write appends
 * to the ledger in its own transaction, so what was worked out under one hash holds for as long as it is the same, and
 * the day: what comes into force by the calendar is no entry.
 */
export const newestChange = (db: Reading): Promise<string | null> => newestBut(db, 'kit', BOOKKEEPING_ACTS);

/** The same of the newest entry that can change what cases that are over cost. */
export const newestCost = (db: Reading): Promise<string | null> => newestBut(db, 'cost', ACTS_WITHOUT_COST);

async function newestBut(db: Reading, kind: string, but: readonly string[]): Promise<string | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const kinds = looked.get(read) ?? new Map<string, { seq: number; hash: string; change: string | null }>();
  looked.set(read, kinds);
  const before = kinds.get(kind);
  // a store that was replaced in place, as the demo is, has another ledger
  const same = before !== undefined && (await hashOf(read, before.seq)) === before.hash;
  const from = same ? before : { seq: 0, change: null };
  const head = await newestEntry(db);
  if (head === null || head.seq === from.seq) return from.change;
  const [newer] = await read
    .select({ hash: ledger.hash })
    .from(ledger)
    .where(and(gt(ledger.seq, from.seq), lte(ledger.seq, head.seq), notInArray(ledger.action, [...but])))
    .orderBy(desc(ledger.seq))
    .limit(1);
  const change = newer?.hash ?? from.change;
  kinds.set(kind, { ...head, change });
  return change;
}

async function hashOf(read: Queries, seq: number): Promise<string | undefined> {
  const [row] = await read.select({ hash: ledger.hash }).from(ledger).where(eq(ledger.seq, seq));
  return row?.hash;
}

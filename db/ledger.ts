import { createHash } from 'node:crypto';
import { asc, desc } from 'drizzle-orm';
import type { Queries } from './client';
import { ledger } from './schema';

/** One thing that was done, by whom, to what. `detail` is plain JSON. */
export interface LedgerEntry {
  /** When it was done, and when it was entered, as ISO instants; the same unless recorded afterwards. */
  doneAt: string;
  enteredAt: string;
  personId: string | null;
  /** A verb-noun in our words, e.g. `confirm-plan`. */
  action: string;
  subjectKind: string;
  subjectId: string;
  detail: Record<string, unknown>;
}

export const LEDGER_START = '0'.repeat(64);

/** Appends to the ledger inside the caller's transaction: the entry and what it records stand or fall together. */
export async function appendLedger(write: Queries, entry: LedgerEntry): Promise<void> {
  const [last] = await write
    .select({ seq: ledger.seq, hash: ledger.hash })
    .from(ledger)
    .orderBy(desc(ledger.seq))
    .limit(1);
  const seq = (last?.seq ?? 0) + 1;
  const previousHash = last?.hash ?? LEDGER_START;
  await write.insert(ledger).values({ ...entry, seq, previousHash, hash: hashOf(previousHash, seq, entry) });
}

/** Walks the whole chain; answers the first entry whose hash does not follow, or `null` when all do. */
export async function findLedgerBreak(read: Queries): Promise<{ seq: number } | null> {
  let previous = LEDGER_START;
  let expectedSeq = 1;
  for (const row of await read.select().from(ledger).orderBy(asc(ledger.seq))) {
    const entry = { ...row, detail: row.detail as Record<string, unknown> };
    if (
      row.seq !== expectedSeq ||
      row.previousHash !== previous ||
      row.hash !== hashOf(previous, row.seq, entry)
    ) {
      return { seq: row.seq };
    }
    previous = row.hash;
    expectedSeq += 1;
  }
  return null;
}

function hashOf(previousHash: string, seq: number, entry: LedgerEntry): string {
  const said = [
    seq,
    entry.doneAt,
    entry.enteredAt,
    entry.personId,
    entry.action,
    entry.subjectKind,
    entry.subjectId,
    canonical(entry.detail),
  ];
  return createHash('sha256').update(previousHash).update(JSON.stringify(said)).digest('hex');
}

/** The same content always gives the same text, whatever order its keys were written in. */
function canonical(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(canonical);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, inner]) => inner !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inner]) => [key, canonical(inner)]),
  );
}

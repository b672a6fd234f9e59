import { createHash } from 'node:crypto';
import { asc, desc, gt, sql } from 'drizzle-orm';
import { canonicalJson, wellFormed } from '@/lib/ledger/canonical';
import { hashInput, LEDGER_FORM, LEDGER_START, type LedgerRow, SEAL, textDigest } from '@/lib/ledger/chain';
import { chainChecker } from '@/lib/ledger/checkChain';
import { entryWritten } from './answeredOnce';
import { tokenOfWork } from './byToken';
import type { Queries } from './client';
import { prepared } from './prepared';
import { ledger } from './schema';

/** One thing that was done, by whom, to what. `detail` is plain JSON. */
export interface LedgerEntry {
  /** When it was done, and when it was entered, as ISO instants; the same unless recorded afterwards. */
  doneAt: string;
  enteredAt: string;
  personId: string | null;
  /** A verb-noun in our words, e.g. `confirm-plan`; its words are in `lib/wording/ledger-acts.ts`. */
  action: string;
  subjectKind: string;
  subjectId: string;
  detail: Record<string, unknown>;
}

/** Appends to the ledger inside the caller's transaction: the entry and what it records stand or fall together. */
export async function appendLedger(
  write: Queries,
  entry: LedgerEntry,
): Promise<{ seq: number; hash: string }> {
  const last = lastEntry(write).get();
  if (!last) return insert(write, entry, { seq: 0, hash: LEDGER_START });
  return insert(write, entry, last.form < LEDGER_FORM ? await seal(write, entry.enteredAt, last) : last);
}

const lastEntry = prepared((write) =>
  write
    .select({ seq: ledger.seq, hash: ledger.hash, form: ledger.form })
    .from(ledger)
    .orderBy(desc(ledger.seq))
    .limit(1)
    .prepare(),
);

const put = (name: string) => sql.placeholder(name);
/** The very text that was hashed is what is stored. */
const insertEntry = prepared((write) =>
  write
    .insert(ledger)
    .values({
      seq: put('seq'),
      form: put('form'),
      doneAt: put('doneAt'),
      enteredAt: put('enteredAt'),
      personId: put('personId'),
      action: put('action'),
      subjectKind: put('subjectKind'),
      subjectId: put('subjectId'),
      detail: sql`${put('detailText')}`,
      previousHash: put('previousHash'),
      hash: put('hash'),
    })
    .prepare(),
);

export function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** The columns of an entry as the chain is made over them: the detail as its stored text. */
export const storedEntry = {
  seq: ledger.seq,
  form: ledger.form,
  doneAt: ledger.doneAt,
  enteredAt: ledger.enteredAt,
  personId: ledger.personId,
  action: ledger.action,
  subjectKind: ledger.subjectKind,
  subjectId: ledger.subjectId,
  detailText: sql<string>`${ledger.detail}`,
  previousHash: ledger.previousHash,
  hash: ledger.hash,
};

// the store answers at once: reading more would hold up whoever waits
const AT_ONCE = 250;

/** Stored entries after `after`, in order; a part of the ledger at a time, so that a long one is never held whole. */
export async function* readLedger(read: Queries, after = 0): AsyncGenerator<LedgerRow> {
  for (let from = after; ; ) {
    const rows = await read
      .select(storedEntry)
      .from(ledger)
      .where(gt(ledger.seq, from))
      .orderBy(asc(ledger.seq))
      .limit(AT_ONCE);
    yield* rows;
    const last = rows.at(-1);
    if (!last || rows.length < AT_ONCE) return;
    from = last.seq;
  }
}

/** Walks the whole chain; answers the first entry that does not follow, or `null` when all do. */
export async function findLedgerBreak(read: Queries): Promise<{ seq: number } | null> {
  const check = chainChecker(sha256);
  for await (const row of readLedger(read)) {
    if (check.take(row).length > 0) return { seq: row.seq };
  }
  return null;
}

async function insert(
  write: Queries,
  entry: LedgerEntry,
  last: { seq: number; hash: string },
): Promise<{ seq: number; hash: string }> {
  const token = tokenOfWork();
  const { detail, ...named } = wellFormed(
    token === null ? entry : { ...entry, detail: { ...entry.detail, byToken: { ...token } } },
  );
  const detailText = canonicalJson(detail);
  const row = { ...named, seq: last.seq + 1, form: LEDGER_FORM, previousHash: last.hash };
  const hash = sha256(hashInput({ ...row, detailText }) ?? '');
  insertEntry(write).run({ ...row, detailText, hash });
  entryWritten();
  return { seq: row.seq, hash };
}

/** Before the first entry of the present form: a digest over the stored texts of those of the first one. */
async function seal(write: Queries, at: string, last: { seq: number; hash: string }) {
  let digest = LEDGER_START;
  for await (const row of readLedger(write)) digest = textDigest(digest, row, sha256);
  const entry: LedgerEntry = {
    doneAt: at,
    enteredAt: at,
    personId: null,
    action: SEAL,
    subjectKind: 'ledger',
    subjectId: 'ledger',
    detail: { from: 1, to: last.seq, digest },
  };
  return insert(write, entry, last);
}

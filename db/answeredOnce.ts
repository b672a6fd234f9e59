import { AsyncLocalStorage } from 'node:async_hooks';
import { lt, type SQL, sql } from 'drizzle-orm';
import type { Database, Queries } from './client';
import { keptAnswers } from './schema';

/** How long the answer to a key is kept, in milliseconds. */
export const KEPT_FOR_MS = 24 * 3_600_000;

/** A write that came with a key: who sent it, and digests of the key and of all that was asked. */
export interface KeyedWrite {
  sender: string;
  keyHash: string;
  requestHash: string;
  /** Now, as an ISO instant. */
  at: string;
  /** Under which status it is answered when all is well. */
  status: number;
}

const present = new AsyncLocalStorage<{ entered: number }>();

/** Told by the ledger of each entry, so that a work knows whether it did anything. */
export function entryWritten(): void {
  const work = present.getStore();
  if (work) work.entered += 1;
}

/**
 * The same store for one write that came with a key: the first work that enters anything in the ledger keeps its key with
 * what it came to, in its own transaction. So there is no moment at which the thing is done and the key is not known.
 */
export function answeredOnce(db: Database, write: KeyedWrite): Database {
  return {
    ...db,
    tx: (work) =>
      db.tx((queries) =>
        present.run({ entered: 0 }, async () => {
          const result = await work(queries);
          if ((present.getStore()?.entered ?? 0) > 0) await keep(queries, write, valueOfOutcome(result));
          return result;
        }),
      ),
  };
}

/** The value of an outcome; what is no outcome is no answer. */
function valueOfOutcome(result: unknown): unknown {
  return typeof result === 'object' &&
    result !== null &&
    'ok' in result &&
    result.ok === true &&
    'value' in result
    ? (result.value ?? null)
    : null;
}

async function keep(queries: Queries, write: KeyedWrite, body: unknown): Promise<void> {
  const { sender, keyHash, requestHash, at, status } = write;
  const over = new Date(Date.parse(at) - KEPT_FOR_MS).toISOString();
  await queries.delete(keptAnswers).where(lt(keptAnswers.keptAt, over));
  // a request that goes on to plan anew writes again: its key is kept already
  await queries
    .insert(keptAnswers)
    .values({ sender, keyHash, requestHash, keptAt: at, status, body: keptBody(body) })
    .onConflictDoNothing();
}

/** An answer as JSON. An empty one is `null` of JSON: the column’s own mapping would make it no value at all. */
export const keptBody = (body: unknown): SQL => sql`${JSON.stringify(body ?? null)}`;

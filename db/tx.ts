import type Sqlite from 'better-sqlite3';
import type { Queries } from './client';

/** Runs `work` as one durable, serialised write. Inside it, await nothing but queries. */
export type Transact = <T>(work: (write: Queries) => Promise<T>) => Promise<T>;

/**
 * Every write of the program goes through here, one at a time.
 *
 * The transaction is immediate: a read that later wants to write would fail with a snapshot error
 * that no busy timeout covers. It is serialised because there is one writer connection: an `await`
 * between a check and its write must not let another write in between. `work` that throws is rolled
 * back whole; when `tx` resolves, the write is on the disk.
 */
export function writeQueue(connection: Sqlite.Database, queries: Queries): Transact {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(async () => {
      connection.exec('BEGIN IMMEDIATE');
      try {
        const result = await work(queries);
        connection.exec('COMMIT');
        return result;
      } catch (error) {
        if (connection.inTransaction) connection.exec('ROLLBACK');
        throw error;
      }
    });
    last = mine.catch(() => undefined);
    return mine;
  };
}

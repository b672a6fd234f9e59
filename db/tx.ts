import { channel } from 'node:diagnostics_channel';
import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import type Sqlite from 'better-sqlite3';
import type { Queries } from './client';

/** Runs `work` as one durable, serialised write. Inside it, await nothing but queries. */
export type Transact = <T>(work: (write: Queries) => Promise<T>) => Promise<T>;

/** What the queue tells whoever measures it: how many wait, how long those now written did, how long their transaction took. */
export interface WriteNews {
  waiting: number;
  waitedMs: number[];
  /** `null`: a write has only come to wait. */
  tookMs: number | null;
}
const news = channel('kitwright.write');

interface Waiting {
  since: number;
  work(write: Queries): Promise<unknown>;
  done(result: unknown): void;
  failed(error: unknown): void;
}

/** No more share one commit: while a group is written, nothing else is answered. */
const MOST_TOGETHER = 20;

/**
 * Every write of the program goes through here, one at a time, in the order they were asked for.
 *
 * The transaction is immediate: a read that later wants to write would fail with a snapshot error
 * that no busy timeout covers. It is serialised because there is one writer connection: an `await`
 * between a check and its write must not let another write in between. `work` that throws is rolled
 * back whole; when `tx` resolves, the write is on the disk.
 *
 * Works that wait at the same moment share one commit, and so one wait for the disk, which is what a
 * small write costs most. Each has a savepoint of its own, so one that throws takes back its own
 * writes alone; all are answered only after the commit. A later work sees what an earlier one wrote:
 * should the commit fail, none of them stands.
 */
export function writeQueue(connection: Sqlite.Database, queries: Queries): Transact {
  const waiting: Waiting[] = [];
  let writing = false;
  async function writeAll() {
    writing = true;
    while (waiting.length > 0) {
      // requests that have arrived meanwhile get as far as the queue
      await turnOfTheLoop();
      const group = waiting.splice(0, MOST_TOGETHER);
      const began = performance.now();
      await writeTogether(connection, queries, group);
      tell({
        waiting: waiting.length,
        waitedMs: group.map(({ since }) => began - since),
        tookMs: performance.now() - began,
      });
    }
    writing = false;
  }
  return <T>(work: (write: Queries) => Promise<T>) =>
    new Promise<T>((done, failed) => {
      waiting.push({ since: performance.now(), work, done: done as Waiting['done'], failed });
      tell({ waiting: waiting.length, waitedMs: [], tookMs: null });
      if (!writing) void writeAll();
    });
}

function tell(message: WriteNews): void {
  if (news.hasSubscribers) news.publish(message);
}

async function writeTogether(connection: Sqlite.Database, queries: Queries, works: Waiting[]): Promise<void> {
  const answers: (() => void)[] = [];
  try {
    // one that a failing disk would not even let us take back is taken back first
    if (connection.inTransaction) connection.exec('ROLLBACK');
    connection.exec('BEGIN IMMEDIATE');
    for (const { work, done, failed } of works) {
      connection.exec('SAVEPOINT one_work');
      try {
        const result = await work(queries);
        answers.push(() => done(result));
      } catch (error) {
        // some failures, such as a full disk, end the transaction itself: then nothing of this group stands
        if (!connection.inTransaction) throw error;
        connection.exec('ROLLBACK TO one_work');
        answers.push(() => failed(error));
      }
      connection.exec('RELEASE one_work');
    }
    connection.exec('COMMIT');
  } catch (error) {
    takeBack(connection);
    for (const { failed } of works) failed(error);
    return;
  }
  for (const answer of answers) answer();
}

/** Whatever the disk says: who waits is told, and the queue goes on; the next write takes back what is left. */
function takeBack(connection: Sqlite.Database): void {
  try {
    if (connection.inTransaction) connection.exec('ROLLBACK');
  } catch {
    // said by the error that led here
  }
}

import Sqlite from 'better-sqlite3';
import { sql } from 'drizzle-orm';
import { expect, it, onTestFinished } from 'vitest';
import { openDatabase, type Queries } from '@/db/client';
import { emptyDatabaseFile } from '../setup/database';

/** A store with one table of its own, and a second connection that sees only what is committed. */
function store() {
  const path = emptyDatabaseFile();
  const other = new Sqlite(path);
  other.exec(`CREATE TABLE notes (id INTEGER PRIMARY KEY, text TEXT NOT NULL UNIQUE CHECK (text <> 'forbidden')) STRICT;
    CREATE TABLE promises (id INTEGER PRIMARY KEY,
      note_id INTEGER NOT NULL REFERENCES notes(id) DEFERRABLE INITIALLY DEFERRED) STRICT`);
  const db = openDatabase(path);
  onTestFinished(() => {
    db.close();
    other.close();
  });
  return {
    tx: db.tx,
    /** Commits seen by another connection so far. */
    version: () => Number(other.pragma('data_version', { simple: true })),
    committed: () => other.prepare('SELECT text FROM notes ORDER BY id').pluck().all() as string[],
  };
}

const put = async (write: Queries, text: string) => {
  await write.run(sql`INSERT INTO notes (text) VALUES (${text})`);
};
const there = async (write: Queries) =>
  (await write.all<{ text: string }>(sql`SELECT text FROM notes`)).length;

it('keeps the order in which writes were asked for, and lets a later one see the earlier', async () => {
  const { tx, committed } = store();
  const texts = Array.from({ length: 60 }, (_, at) => `note ${at}`);
  const seen = await Promise.all(
    texts.map((text) =>
      tx(async (write) => {
        const before = await there(write);
        await put(write, text);
        return before;
      }),
    ),
  );
  expect(seen).toEqual(texts.map((_, at) => at));
  expect(committed()).toEqual(texts);
});

it('gives the writes that wait together one commit, of twenty at most', async () => {
  const { tx, version } = store();
  const before = version();
  const versions: number[] = [];
  await Promise.all(
    Array.from({ length: 45 }, (_, at) =>
      tx((write) => put(write, `note ${at}`)).then(() => {
        versions.push(version() - before);
      }),
    ),
  );
  // 45 writes in three groups: each answer finds its own group on the disk
  expect(new Set(versions).size).toBe(3);
  expect(versions.slice(0, 20).every((one) => one === versions[0] && one > 0)).toBe(true);
});

it('answers a write only when it is committed', async () => {
  const { tx, committed } = store();
  const found = await Promise.all(
    ['first', 'second', 'third'].map((text) => tx((write) => put(write, text)).then(committed)),
  );
  expect(found).toEqual(Array(3).fill(['first', 'second', 'third']));
});

it('takes back a write that throws, alone and whole', async () => {
  const { tx, committed } = store();
  const outcomes = await Promise.allSettled([
    tx((write) => put(write, 'before')),
    tx(async (write) => {
      await put(write, 'half');
      throw new Error('thought better of it');
    }),
    tx(async (write) => {
      await put(write, 'other half');
      await put(write, 'forbidden');
    }),
    tx(async (write) => {
      await put(write, 'after');
      return there(write);
    }),
  ]);
  expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'rejected', 'fulfilled']);
  expect(outcomes[1]).toMatchObject({ reason: { message: 'thought better of it' } });
  expect(String((outcomes[2] as PromiseRejectedResult).reason)).toMatch(/CHECK|insert/i);
  expect(outcomes[3]).toMatchObject({ value: 2 });
  expect(committed()).toEqual(['before', 'after']);
});

it('refuses every write of a group whose transaction is lost, and goes on with the next', async () => {
  const { tx, committed } = store();
  const lost = await Promise.allSettled([
    tx((write) => put(write, 'first')),
    tx(async (write) => {
      await put(write, 'second');
      // as SQLite itself does when the disk is full
      await write.run(sql`ROLLBACK`);
      throw new Error('the disk is full');
    }),
    tx((write) => put(write, 'third')),
  ]);
  expect(lost.map(({ status }) => status)).toEqual(['rejected', 'rejected', 'rejected']);
  expect(committed()).toEqual([]);
  await tx((write) => put(write, 'fourth'));
  expect(committed()).toEqual(['fourth']);
});

it('refuses every write of a group that cannot be committed', async () => {
  const { tx, committed } = store();
  const outcomes = await Promise.allSettled([
    tx((write) => put(write, 'first')),
    // a deferred reference is asked for at the commit only
    tx(async (write) => {
      await write.run(sql`INSERT INTO promises (note_id) VALUES (99)`);
    }),
  ]);
  expect(outcomes.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
  expect(committed()).toEqual([]);
  await tx((write) => put(write, 'second'));
  expect(committed()).toEqual(['second']);
});

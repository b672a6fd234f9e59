import { writeFileSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import { openDatabase } from '@/db/client';
import { freeSpace, isSameDisk, quickLook } from '@/db/health';
import { probeWriting } from '@/db/operations/running/probe-writing';
import { plainReason, storageFault } from '@/lib/running/plainReason';
import { demoDatabaseFile, emptyDatabase, emptyDatabaseFile } from '../../setup/database';

const NOW = '2026-01-14T06:30:00.000Z';

test('a small write is tried, and says in plain words when it cannot be written', async () => {
  const db = emptyDatabase();
  expect((await probeWriting({ db, now: NOW })).problem).toBeNull();
  expect((await probeWriting({ db, now: NOW })).problem).toBeNull();

  const path = emptyDatabaseFile();
  const busy = openDatabase(path);
  onTestFinished(() => busy.close());
  const locked = new Sqlite(path);
  locked.exec('BEGIN IMMEDIATE');
  try {
    expect((await probeWriting({ db: busy, now: NOW })).problem).toBe('another program holds the database.');
  } finally {
    locked.close();
  }
});

test('what the disk says is put into plain words', () => {
  const coded = (code: string, message = 'x') => Object.assign(new Error(message), { code });
  expect(plainReason(coded('SQLITE_FULL'))).toBe('the disk is full.');
  expect(plainReason(coded('ENOSPC'))).toBe('the disk is full.');
  expect(plainReason(coded('SQLITE_READONLY'))).toBe('the disk, or the file, may only be read.');
  expect(plainReason(coded('SQLITE_CORRUPT'))).toBe('the database file is damaged.');
  expect(plainReason(coded('SQLITE_IOERR_WRITE'))).toBe(
    'the disk takes no writes: it fails, or may only be read.',
  );
  expect(plainReason(coded('SQLITE_IOERR_READ'))).toBe('the disk does not answer as it should.');
  expect(plainReason(new Error('something else'))).toBe('something else.');
  expect(plainReason(new Error('Failed query', { cause: coded('SQLITE_FULL') }))).toBe('the disk is full.');
});

test('a fault of the store is known by its code, also behind another error, and nothing else is taken for one', () => {
  const coded = (code: string) => Object.assign(new Error('x'), { code });
  expect(storageFault(new Error('Failed query', { cause: coded('SQLITE_IOERR_WRITE') }))).toBe('notWritten');
  expect(storageFault(coded('EROFS'))).toBe('readOnly');
  expect(storageFault(coded('SQLITE_CONSTRAINT_UNIQUE'))).toBeNull();
  expect(storageFault(coded('EACCES'))).toBeNull();
  expect(storageFault(new Error('the disk is full, says a note that somebody wrote'))).toBeNull();
});

test('a quick look finds a changed entry among the newest, a row that points at nothing, and no database at all', async () => {
  const path = await demoDatabaseFile();
  expect(quickLook(path)).toMatchObject({ pages: [], danglingRows: 0, wrongEntries: 0, isDemo: true });
  const connection = new Sqlite(path);
  connection.pragma('foreign_keys = OFF');
  connection.exec('DROP TRIGGER ledger_is_never_changed');
  connection.exec("UPDATE ledger SET detail = '{}' WHERE seq = (SELECT max(seq) FROM ledger)");
  connection.exec("UPDATE items SET maker_id = 'maker_nobody' WHERE code = (SELECT min(code) FROM items)");
  connection.close();
  expect(quickLook(path)).toMatchObject({ danglingRows: 1, wrongEntries: 1 });
  const none = `${path}.none`;
  writeFileSync(none, 'no database'.repeat(500));
  expect(() => quickLook(none)).toThrow(/not a database/);
});

test('free space and disks are told by the system, also of a file that is not there yet', () => {
  expect(freeSpace('package.json')).toBeGreaterThan(0);
  expect(freeSpace('nothing-there')).toBeGreaterThan(0);
  expect(isSameDisk('package.json', 'nothing-there')).toBe(true);
  expect(isSameDisk('package.json', '/proc/version')).toBe(false);
});

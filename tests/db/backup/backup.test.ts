import { type ChildProcess, fork } from 'node:child_process';
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, inject, onTestFinished, test } from 'vitest';
import { makeBackup, NoBackup } from '@/db/backup/make';
import { openBackup } from '@/db/backup/open';
import { putBack } from '@/db/backup/putBack';
import { backupsIn } from '@/db/backup/read';
import { removeOldNights } from '@/db/backup/remove';
import { isRecipient, makeKeyFile, openSealed, WrongKey } from '@/db/backup/seal';
import { openDatabase } from '@/db/client';
import { appendLedger } from '@/db/ledger';
import { writeHead } from '@/db/ledgerHeadsFile';
import { isProven } from '@/lib/backups/manifest';
import { verifyCommand } from '@/scripts/ledger/verifyCommand';
import { demoDatabaseFile, emptyDatabaseFile } from '../../setup/database';

const NOW = '2026-01-14T02:30:00.000Z';

function folder(): string {
  const path = mkdtempSync(join(inject('databaseFolder'), 'backups-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

const plain = (database: string, to: string) =>
  makeBackup({ database, folder: to, reason: 'asked', now: NOW, headsText: '', recipient: null });

/** So many entries more, each in a write of its own. */
async function write(path: string, count: number, from = 0): Promise<void> {
  const db = openDatabase(path);
  for (let at = from; at < from + count; at += 1)
    await db.tx((queries) =>
      appendLedger(queries, {
        doneAt: NOW,
        enteredAt: NOW,
        personId: null,
        action: 'change-settings',
        subjectKind: 'hospital',
        subjectId: `entry-${at}`,
        detail: { at },
      }),
    );
  db.close();
}

function rows(path: string, query: string): unknown[] {
  const connection = new Sqlite(path, { readonly: true });
  try {
    return connection.prepare(query).all();
  } finally {
    connection.close();
  }
}

/** Every row of every table, as text. */
function everything(path: string): Record<string, string> {
  const tables = rows(
    path,
    `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND sql NOT LIKE 'CREATE VIRTUAL%' ORDER BY name`,
  ) as { name: string }[];
  return Object.fromEntries(
    tables.map(({ name }) => [name, JSON.stringify(rows(path, `SELECT * FROM "${name}"`))]),
  );
}

test('a backup holds every row of the database, is proven, and says what it is', async () => {
  const database = await demoDatabaseFile();
  const to = folder();
  const manifest = await plain(database, to);
  expect(manifest).toMatchObject({
    file: 'kitwright-20260114T023000Z-asked.sqlite',
    isSealed: false,
    proof: { faults: [], provedAt: NOW },
  });
  expect(manifest.proof.head).toEqual(
    rows(database, 'SELECT seq, hash FROM ledger ORDER BY seq DESC LIMIT 1')[0],
  );
  const path = join(to, manifest.file);
  expect(statSync(path).mode & 0o777).toBe(0o600);
  expect(everything(path)).toEqual(everything(database));
  expect(backupsIn(to)).toEqual([manifest]);
  // nothing unfinished is left
  expect(readdirSync(to).sort()).toEqual([manifest.file, `${manifest.file}.json`]);
  // a second one of the same second takes nothing away from the first
  expect((await plain(database, to)).file).toBe('kitwright-20260114T023000Z-asked-2.sqlite');
});

test('what a backup that was killed left is cleared an hour later, and nothing that is under way or of anybody else', async () => {
  const database = await demoDatabaseFile();
  const to = folder();
  const dead = join(to, '.kitwright-20260113T023000Z-nightly.unfinished');
  const underWay = join(to, '.kitwright-20260114T022900Z-nightly.unfinished');
  const other = join(to, 'letters.unfinished');
  for (const path of [dead, underWay, other]) writeFileSync(path, 'x');
  const hoursAgo = Date.now() / 1000 - 7200;
  for (const path of [dead, other]) utimesSync(path, hoursAgo, hoursAgo);
  await plain(database, to);
  expect([dead, underWay, other].map((path) => existsSync(path))).toEqual([false, true, true]);
});

test('it is made while another process writes: one moment of the ledger, whole', async () => {
  const database = await demoDatabaseFile();
  await write(database, 1);
  const to = folder();
  const child = await elsewhere(
    folder(),
    `const db = new Sqlite(${JSON.stringify(database)});
     db.pragma('busy_timeout = 5000');
     db.exec('CREATE TABLE probe (a INTEGER, b INTEGER)');
     const one = db.prepare('INSERT INTO probe VALUES (?, ?)');
     let n = 0;
     setInterval(() => { for (const end = n + 50; n < end; n += 1) db.transaction(() => { one.run(n, 0); one.run(n, 1); })(); }, 1);
     process.send('writing');`,
  );
  try {
    const counted: number[] = [];
    for (let again = 0; again < 3; again += 1) {
      const { file, proof } = await plain(database, to);
      expect(proof.faults).toEqual([]);
      // both halves of each write, or neither
      expect(rows(join(to, file), 'SELECT a FROM probe GROUP BY a HAVING count(*) <> 2')).toEqual([]);
      const [{ n }] = rows(join(to, file), 'SELECT count(*) AS n FROM probe') as [{ n: number }];
      counted.push(n);
    }
    // the writer went on meanwhile
    expect(counted[2]).toBeGreaterThan(counted[0] ?? 0);
  } finally {
    child.kill('SIGKILL');
  }
});

test('a database that is damaged gives a backup that is not proven, and says what is wrong', async () => {
  const database = await demoDatabaseFile();
  const connection = new Sqlite(database);
  connection.exec('DROP TRIGGER ledger_is_never_changed');
  connection.prepare("UPDATE ledger SET detail = '{}' WHERE seq = 1").run();
  connection.close();
  const to = folder();
  const manifest = await plain(database, to);
  expect(isProven(manifest)).toBe(false);
  expect(manifest.proof.faults.join(' ')).toMatch(/Entry 1 was changed after it was written/);
  expect(manifest.proof.faults.join(' ')).toMatch(/has lost what keeps its ledger from being changed/);
});

test('a row that points at nothing is found', async () => {
  const database = await demoDatabaseFile();
  const connection = new Sqlite(database);
  connection.pragma('foreign_keys = OFF');
  connection
    .prepare("UPDATE items SET maker_id = 'maker_nobody' WHERE code = (SELECT min(code) FROM items)")
    .run();
  connection.close();
  const { proof } = await plain(database, folder());
  expect(proof.faults).toEqual(['1 row points at something that is not there.']);
});

test('heads written later than the backup say nothing of it, earlier ones that differ do', async () => {
  const database = await demoDatabaseFile();
  await write(database, 2);
  const ledger =
    (rows(database, 'SELECT hash FROM ledger WHERE seq = 1') as { hash: string }[])[0]?.hash ?? '';
  const line = (seq: number, hash: string) =>
    `${JSON.stringify({ at: NOW, because: 'time', hash, ledger, seq })}\n`;
  const ask = (headsText: string) =>
    makeBackup({ database, folder: folder(), reason: 'asked', now: NOW, headsText, recipient: null });
  expect((await ask(line(999, 'a'.repeat(64)))).proof.faults).toEqual([]);
  expect((await ask(line(1, ledger) + line(2, 'a'.repeat(64)))).proof.faults.join()).toMatch(
    /Entry 2 is another one than when its head was written/,
  );
});

test('no database, or no room for a copy, is said before anything is written', async () => {
  const to = folder();
  await expect(plain(join(to, 'nothing.sqlite'), to)).rejects.toThrow(NoBackup);
  expect(readdirSync(to)).toEqual([]);
});

test('a sealed backup is opened by its key alone, and never lies open where the backups are', async () => {
  const database = await demoDatabaseFile();
  const to = folder();
  const keyFile = join(folder(), 'key.txt');
  const recipient = await makeKeyFile(keyFile, NOW);
  expect(isRecipient(recipient)).toBe(true);
  expect(isRecipient('age1nothing')).toBe(false);
  expect(statSync(keyFile).mode & 0o777).toBe(0o600);
  await expect(makeKeyFile(keyFile, NOW)).rejects.toThrow(/exists already/);
  const manifest = await makeBackup({
    database,
    folder: to,
    reason: 'asked',
    now: NOW,
    headsText: '',
    recipient,
  });
  const path = join(to, manifest.file);
  expect(manifest).toMatchObject({ isSealed: true, proof: { faults: [] } });
  expect(readFileSync(path).subarray(0, 21).toString()).toBe('age-encryption.org/v1');
  expect(readFileSync(path).includes('SQLite format 3')).toBe(false);
  const opened = join(to, 'opened.sqlite');
  const asked = { path, to: opened, now: NOW };
  await expect(openBackup({ ...asked, keyFile: null })).rejects.toThrow(
    /is sealed: name the file with its key/,
  );
  const other = join(folder(), 'other.txt');
  await makeKeyFile(other, NOW);
  await expect(openBackup({ ...asked, keyFile: other })).rejects.toThrow(WrongKey);
  expect((await openBackup({ ...asked, keyFile })).proof.faults).toEqual([]);
  expect(everything(opened)).toEqual(everything(database));
  // one bit of it changed: the key opens it no more
  const bytes = readFileSync(path);
  const at = bytes.length - 40;
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  writeFileSync(path, bytes);
  await expect(openBackup({ ...asked, keyFile })).rejects.toThrow(WrongKey);
});

test('a backup whose file changed since is not put back, whichever byte it was', async () => {
  const database = await demoDatabaseFile();
  const to = folder();
  const { file, bytes } = await plain(database, to);
  const path = join(to, file);
  const whole = readFileSync(path);
  for (const at of [0, 20, 5_000, Math.floor(bytes / 2), bytes - 1]) {
    const changed = Buffer.from(whole);
    changed[at] = (changed[at] ?? 0) ^ 0x10;
    writeFileSync(path, changed);
    const { proof } = await openBackup({ path, keyFile: null, to: join(to, 'opened'), now: NOW });
    expect(proof.faults[0]).toMatch(/is not as it was when it was made/);
    await expect(
      putBack({ backup: path, keyFile: null, database, headsPlace: join(to, 'heads'), now: NOW, by: 'root' }),
    ).rejects.toThrow(/Nothing was put back/);
  }
});

test('put back: the database is as in the backup, what was there is kept, and the ledger says what is missing', async () => {
  const database = await demoDatabaseFile();
  await write(database, 3);
  const to = folder();
  const { file, proof } = await plain(database, to);
  const before = everything(database);
  await write(database, 4, 3);
  const after = everything(database);
  const headsPlace = join(to, 'heads.jsonl');
  const ledger =
    (rows(database, 'SELECT hash FROM ledger WHERE seq = 1') as { hash: string }[])[0]?.hash ?? '';
  for (const seq of [2, 8]) {
    const [{ hash }] = rows(database, `SELECT hash FROM ledger WHERE seq = ${seq}`) as [{ hash: string }];
    await writeHead(headsPlace, { at: NOW, because: 'time', hash, ledger, seq });
  }
  const outcome = await putBack({
    backup: join(to, file),
    keyFile: null,
    database,
    headsPlace,
    now: '2026-01-14T09:00:00.000Z',
    by: 'root',
  });
  expect(outcome.lost).toBe(4);
  const { ledger: entries, ledger_things: things, ...rest } = everything(database);
  const { ledger: entriesBefore, ledger_things: thingsBefore, ...restBefore } = before;
  expect(rest).toEqual(restBefore);
  expect(entries?.startsWith((entriesBefore ?? '').slice(0, -1))).toBe(true);
  expect(things).not.toBe(thingsBefore);
  const [told] = rows(database, 'SELECT * FROM ledger ORDER BY seq DESC LIMIT 1') as Record<string, string>[];
  expect(told?.action).toBe('restore-backup');
  expect(JSON.parse(told?.detail ?? '')).toMatchObject({
    entriesAfter: 4,
    head: proof.head,
    by: 'root',
    file,
  });
  expect(everything(outcome.aside ?? '')).toEqual(after);
  // the heads of entries that are there still hold, the others are kept aside
  const said: string[] = [];
  const out = { say: (line: string) => said.push(line), refuse: (line: string) => said.push(line) };
  expect(verifyCommand(['--db', database, '--heads', headsPlace], process.env, out)).toBe(0);
  expect(said.join(' ')).toContain('1 head compared');
  expect(existsSync(`${headsPlace}.until-20260114T090000Z`)).toBe(true);
});

test('nothing is put back while anything has the database open, nor of a newer program', async () => {
  const database = await demoDatabaseFile();
  const to = folder();
  const { file } = await plain(database, to);
  const request = {
    backup: join(to, file),
    keyFile: null,
    database,
    headsPlace: join(to, 'h'),
    now: NOW,
    by: 'root',
  };
  const before = everything(database);
  const child = await elsewhere(
    to,
    `const db = new Sqlite(${JSON.stringify(database)});
     db.prepare('SELECT count(*) FROM items').get();
     setInterval(() => {}, 1000);
     process.send('open');`,
  );
  await expect(putBack(request)).rejects.toThrow(/is in use: stop the server first/);
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGKILL');
  await gone;
  expect(everything(database)).toEqual(before);

  const newer = emptyDatabaseFile();
  const connection = new Sqlite(newer);
  connection.prepare("INSERT INTO migrations (name, hash) VALUES ('9999-later.sql', 'x')").run();
  connection.close();
  const other = await plain(newer, to);
  expect(other.proof.faults.join()).toMatch(/newer Kitwright: it has 9999-later/);
  await expect(putBack({ ...request, backup: join(to, other.file) })).rejects.toThrow(/newer Kitwright/);
  expect(everything(database)).toEqual(before);
  expect((await putBack(request)).aside).not.toBeNull();
});

test('old nights are deleted with their descriptions, and nothing else of the folder', async () => {
  const database = emptyDatabaseFile();
  const to = folder();
  for (const day of [10, 11, 12, 13])
    await makeBackup({
      database,
      folder: to,
      reason: 'nightly',
      now: `2026-01-${day}T02:30:00.000Z`,
      headsText: '',
      recipient: null,
    });
  await plain(database, to);
  writeFileSync(join(to, 'notes.txt'), 'ours');
  expect(removeOldNights(to, { nights: 2, months: 1 }).map(({ madeAt }) => madeAt.slice(8, 10))).toEqual([
    '11',
  ]);
  expect(readdirSync(to)).toHaveLength(9);
});

test('a file sealed elsewhere by the same open format is opened', async () => {
  // sealed by age 1.1.1 of Debian with the key beside it
  const fixtures = join('tests', 'fixtures', 'backups');
  const to = join(folder(), 'opened.txt');
  await openSealed(join(fixtures, 'sealed-elsewhere.age'), to, join(fixtures, 'key.txt'));
  expect(readFileSync(to, 'utf8')).toBe('Opened by its key.\n');
});

/** Another process, as SQLite's locks are of processes; resolved when it has said it is so far. */
async function elsewhere(inFolder: string, program: string): Promise<ChildProcess> {
  const script = join(inFolder, 'elsewhere.cjs');
  const sqlite = JSON.stringify(join(process.cwd(), 'node_modules', 'better-sqlite3'));
  writeFileSync(script, `const Sqlite = require(${sqlite});\n${program}`);
  const child = fork(script, { stdio: 'ignore' });
  await new Promise((resolve) => child.once('message', resolve));
  return child;
}

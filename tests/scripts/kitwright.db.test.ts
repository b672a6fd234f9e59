import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, inject, onTestFinished, test } from 'vitest';
import { openDatabase } from '@/db/client';
import { ledgerWatch } from '@/db/ledgerWatch';
import { kitwright as command } from '@/scripts/kitwright/kitwright';
import { demoDatabaseFile } from '../setup/database';

interface Said {
  exit: number;
  out: string;
  err: string;
}

/** The command as a person types it; `secret` is what they type when asked. */
async function kitwright(words: string[], env: Record<string, string>, secret = ''): Promise<Said> {
  const said = { out: [] as string[], err: [] as string[] };
  const exit = await command(words, { ...process.env, PORT: '1', ...env } as NodeJS.ProcessEnv, {
    say: (line) => said.out.push(line),
    refuse: (line) => said.err.push(line),
    secret: async () => secret,
    now: () => new Date(),
  });
  return { exit, out: said.out.join('\n'), err: said.err.join('\n') };
}

async function demo() {
  const folder = mkdtempSync(join(inject('databaseFolder'), 'command-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const KITWRIGHT_DB = await demoDatabaseFile();
  return { KITWRIGHT_DB, KITWRIGHT_BACKUPS: join(folder, 'backups'), folder };
}

test('backup, list, verify, damage, restore: the whole way by command', async () => {
  const { folder, ...env } = await demo();
  const made = await kitwright(['backup', '--json'], env);
  expect(made).toMatchObject({ exit: 0, err: '' });
  const { file } = JSON.parse(made.out);
  const path = join(env.KITWRIGHT_BACKUPS, file);
  expect((await kitwright(['backups'], env)).out).toContain(file);
  expect(await kitwright(['verify'], env)).toMatchObject({ exit: 0 });
  expect(await kitwright(['verify', path], env)).toMatchObject({ exit: 0 });

  const connection = new Sqlite(env.KITWRIGHT_DB);
  connection.pragma('foreign_keys = OFF');
  connection.exec('DROP TRIGGER ledger_is_never_shortened; DELETE FROM ledger');
  connection.close();
  const found = await kitwright(['verify'], env);
  expect(found.exit).toBe(1);
  expect(found.out).toContain('The database has lost what keeps its ledger from being changed');

  expect(await kitwright(['restore', path], env)).toMatchObject({ exit: 2, out: '' });
  const put = await kitwright(['restore', path, '--yes'], env);
  expect(put).toMatchObject({ exit: 0, err: '' });
  expect(put.out).toMatch(/is as in the backup; what was there is kept as/);
  expect(await kitwright(['verify'], env)).toMatchObject({ exit: 0 });
  expect(folder).toBeTruthy();
});

test('what is written once and for all is compared with the newest proven backup', async () => {
  const { folder: _, ...env } = await demo();
  const none = await kitwright(['verify'], env);
  expect(none.out).toContain('compared with no backup: none is proven');
  const { file } = JSON.parse((await kitwright(['backup', '--json'], env)).out);
  const whole = await kitwright(['verify'], env);
  expect(whole).toMatchObject({ exit: 0 });
  expect(whole.out).toContain(`is as in the proven backup ${file}`);

  // what a disk does: no trigger is asked, and neither the engine nor the ledger can tell
  const connection = new Sqlite(env.KITWRIGHT_DB);
  const guard = connection
    .prepare("SELECT sql FROM sqlite_schema WHERE name = 'piece_moves_are_never_changed'")
    .pluck()
    .get() as string;
  connection.exec('DROP TRIGGER piece_moves_are_never_changed');
  connection.exec(
    'UPDATE piece_moves SET quantity = quantity + 1 WHERE seq = (SELECT min(seq) FROM piece_moves)',
  );
  connection.exec(guard);
  connection.close();
  const found = await kitwright(['verify'], env);
  expect(found.exit).toBe(1);
  expect(found.out).toMatch(
    new RegExp(`1 row of piece_moves, which nothing ever changes, is not as in the proven backup ${file}`),
  );
});

test('the doctor says in plain words what is not well, and exits 1 when something is wrong', async () => {
  const { folder, ...env } = await demo();
  const well = await kitwright(['doctor', '--json'], env);
  expect(well.exit).toBe(0);
  const { lights } = JSON.parse(well.out);
  expect(lights.map(({ name }: { name: string }) => name)).toEqual([
    'node',
    'environment',
    'space',
    'database',
    'schema',
    'pages',
    'references',
    'ledger',
    'heads',
    'writeLog',
    'backup',
    'backupSpace',
    'clock',
    'server',
  ]);
  // there is a ledger, and nothing of it outside: nobody would see an end cut off
  expect(lights.find(({ name }: { name: string }) => name === 'heads')).toMatchObject({
    state: 'look',
    says: expect.stringContaining('No head of this ledger was found'),
    remedy: expect.stringContaining('verify'),
  });
  const notOne = join(folder, 'not-one.sqlite');
  writeFileSync(
    notOne,
    'This is no database, but a text that is long enough to be looked at as one.'.repeat(20),
  );
  const wrong = await kitwright(['doctor', '--db', notOne], env);
  expect(wrong.exit).toBe(1);
  expect(wrong.out).toMatch(/✗ Database \(wrong\): .* cannot be opened: file is not a database/);
  expect(wrong.out).toMatch(/put back the newest proven backup/);
  const unset = await kitwright(['doctor'], { ...env, KITWRIGHT_BACKUP_AT: 'midnight' });
  expect(unset).toMatchObject({ exit: 1 });
  expect(unset.out).toContain(
    'KITWRIGHT_BACKUP_AT cannot be used as it is: use a time such as 02:30, or no.',
  );
});

test('people are changed as a named administrator alone, and the ledger has their name', async () => {
  const { folder: _, ...env } = await demo();
  const add = ['user', 'add', 'Iris Penhallow', 'technician'];
  expect(await kitwright(add, env)).toMatchObject({ exit: 2, out: '' });
  const asEdda = [...add, '--as', 'Edda Winslow'];
  const refused = await kitwright(asEdda, env, 'not it');
  expect(refused).toMatchObject({ exit: 2, out: '' });
  expect(refused.err).toMatch(/That is not the password of Edda Winslow/);
  // a technician may not, whatever their password
  const notTheirs = await kitwright([...add, '--as', 'Wren Adeyemi'], env, 'larkmoor infirmary');
  expect(notTheirs).toMatchObject({ exit: 2, out: '' });
  const added = await kitwright([...asEdda, '--json'], env, 'larkmoor infirmary');
  expect(added).toMatchObject({ exit: 0 });
  const { id, firstPassword } = JSON.parse(added.out);
  const connection = new Sqlite(env.KITWRIGHT_DB, { readonly: true });
  const told = connection.prepare('SELECT * FROM ledger ORDER BY seq DESC LIMIT 1').get();
  connection.close();
  expect(told).toMatchObject({ action: 'add-person', subject_id: id, person_id: 'person_edda-winslow' });
  expect(JSON.stringify(told)).not.toContain(firstPassword);
  expect((await kitwright(['user', 'list'], env)).out).toMatch(/Iris Penhallow +Sterile services technician/);
});

test('what is not understood is said with the way out, exit 2, as JSON where asked', async () => {
  const { folder: _, ...env } = await demo();
  expect((await kitwright([], env)).exit).toBe(2);
  expect((await kitwright(['help'], env)).exit).toBe(0);
  expect((await kitwright(['bakcup'], env)).err).toMatch(
    /There is no command “bakcup”\. Commands: doctor, backup/,
  );
  expect((await kitwright(['backup', '--zz'], env)).err).toMatch(/Usage: kitwright backup/);
  const said = await kitwright(['verify', 'nothing-there', '--json'], env);
  expect(said.exit).toBe(2);
  expect(JSON.parse(said.out)).toEqual({
    problem: expect.stringMatching(/There is no backup at .*nothing-there/),
  });
});

test('a key seals and opens, by command', async () => {
  const { folder, ...env } = await demo();
  const keyFile = join(folder, 'key.txt');
  const { recipient } = JSON.parse((await kitwright(['key', 'new', keyFile, '--json'], env)).out);
  const made = await kitwright(['backup', '--json'], { ...env, KITWRIGHT_BACKUP_KEY: recipient });
  const { file, isSealed } = JSON.parse(made.out);
  expect(isSealed).toBe(true);
  const path = join(env.KITWRIGHT_BACKUPS, file);
  expect((await kitwright(['verify', path], env)).err).toMatch(/is sealed: name the file with its key/);
  expect((await kitwright(['verify', path, '--key', keyFile], env)).exit).toBe(0);
  expect(readFileSync(keyFile, 'utf8')).toContain('AGE-SECRET-KEY-1');
});

test('it is started by its own file, and a calculation runs on standard input', () => {
  const start = (words: string[], input: string) =>
    execFileSync(process.execPath, ['scripts/kitwright.mjs', ...words], { input, encoding: 'utf8' });
  const input = '{"pieces":2,"probability":0.5}';
  expect(() => start(['calculate', 'nothing'], input)).toThrow(/There is no calculation “nothing”/);
  expect(start(['help'], '')).toContain('doctor');
});

test('tokens are issued, listed and revoked by an administrator who proves who they are', async () => {
  const { KITWRIGHT_DB } = await demo();
  const env = { KITWRIGHT_DB };
  const as = ['--as', 'Edda Winslow', '--json'];
  const issue = [
    'token',
    'issue',
    'Theatre list',
    '--for',
    'Gwen Sallis',
    '--scope',
    'bookCase,keepTheatreList',
  ];
  expect(await kitwright([...issue, ...as], env, 'a wrong one')).toMatchObject({ exit: 2 });
  const byAnother = await kitwright([...issue, '--as', 'Gwen Sallis'], env, 'larkmoor infirmary');
  expect(byAnother).toMatchObject({ exit: 2, err: expect.stringContaining('can’t issue or revoke tokens') });
  const made = await kitwright([...issue, ...as], env, 'larkmoor infirmary');
  expect(made).toMatchObject({ exit: 0, err: '' });
  const { id, token } = JSON.parse(made.out);
  expect(token).toMatch(/^kitwright_/);
  const never = await kitwright(
    ['token', 'issue', 'Other', '--for', 'Gwen Sallis', '--scope', 'confirmPlan', ...as],
    env,
    'larkmoor infirmary',
  );
  expect(never).toMatchObject({
    exit: 2,
    err: expect.stringContaining('no act that a token can be issued for'),
  });
  const list = async () =>
    JSON.parse((await kitwright(['token', 'list', ...as], env, 'larkmoor infirmary')).out);
  expect(await list()).toMatchObject([{ id, state: 'open', person: { name: 'Gwen Sallis' } }]);
  expect(JSON.stringify(await list())).not.toContain(token);
  const revoked = await kitwright(['token', 'revoke', 'Theatre list', ...as], env, 'larkmoor infirmary');
  expect(revoked).toMatchObject({ exit: 0, err: '' });
  expect(await list()).toMatchObject([{ id, state: 'revoked' }]);
  expect(
    await kitwright(['token', 'revoke', 'Theatre list', ...as], env, 'larkmoor infirmary'),
  ).toMatchObject({
    exit: 2,
  });
});

test('what stands in the way is named: the database that --db says, and the file or folder a command was given', async () => {
  const { folder, ...env } = await demo();
  const none = join(folder, 'none.sqlite');
  const no = join(folder, 'no.sqlite');
  writeFileSync(no, 'nothing of a database'.repeat(100));
  const cases: [string[], string][] = [
    [['verify', '--db', none], `There is no database at ${none}.`],
    [['verify', '--db', no], `${no} is not a database`],
    [['export', 'people', join(folder, 'p.csv'), '--db', no], `${no} is not a database`],
    [['restore', none, '--yes'], `There is no backup at ${none}`],
    [['export', 'archive', join(folder, 'no', 'a.zip')], `There is no folder ${join(folder, 'no')}`],
    [['export', 'people', join(folder, 'no', 'p.csv')], `There is no folder ${join(folder, 'no')}`],
    [['export', 'people', join(no, 'p.csv')], 'is a file. Name another.'],
    [['backup', '--to', no], no],
    [['key', 'new', join(folder, 'no', 'key.txt')], `There is no folder ${join(folder, 'no')}`],
  ];
  for (const [words, says] of cases) {
    const said = await kitwright(words, env);
    expect([said.exit, said.out], words.join(' ')).toEqual([2, '']);
    expect(said.err, words.join(' ')).toContain(says);
    expect(said.err, words.join(' ')).not.toContain('error of its own');
    const asJson = await kitwright([...words, '--json'], env);
    expect(JSON.parse(asJson.out)).toEqual({ problem: said.err });
  }
  // nothing of what failed is left behind
  expect(readdirSync(folder).sort()).toEqual(['no.sqlite']);
});

test('a database of a newer or older program is neither read nor written by lists, people and tokens', async () => {
  const { folder, ...env } = await demo();
  const list = join(folder, 'people.csv');
  writeFileSync(list, 'Name,Role\r\nAvery Lind,Surgeon\r\n');
  const commands = [
    ['user', 'list'],
    ['user', 'add', 'Avery Lind', 'surgeon', '--as', 'Edda Winslow'],
    ['token', 'list', '--as', 'Edda Winslow'],
    ['import', 'people', list, '--as', 'Edda Winslow', '--yes'],
    ['export', 'people', join(folder, 'out.csv')],
  ];
  const connection = new Sqlite(env.KITWRIGHT_DB);
  onTestFinished(() => {
    connection.close();
  });
  const change = (query: string) => connection.exec(query);
  const entries = () => connection.prepare('SELECT count(*) FROM ledger').pluck().get();
  const before = entries();
  const hash = "'0000000000000000000000000000000000000000000000000000000000000000'";
  for (const [query, says] of [
    [
      `INSERT INTO migrations VALUES ('9999-of-a-newer.sql', ${hash})`,
      /made by a newer Kitwright.*\n.*newer program/,
    ],
    [
      "DELETE FROM migrations WHERE name >= (SELECT max(name) FROM migrations WHERE name < '9999')",
      /1 step older than this program.*\nStart the server/,
    ],
  ] as const) {
    change(query);
    for (const words of commands) {
      const said = await kitwright(words, env, 'larkmoor infirmary');
      expect([said.exit, said.out], words.join(' ')).toEqual([2, '']);
      expect(said.err, words.join(' ')).toMatch(says);
    }
  }
  expect(entries()).toBe(before);
  expect(readdirSync(folder)).toEqual(['people.csv']);
});

test('a backup of a hospital whose server wrote its heads outside is verified and put back, also where those are lost', async () => {
  const { folder, ...env } = await demo();
  const heads = `${env.KITWRIGHT_DB}-heads.jsonl`;
  const connection = new Sqlite(env.KITWRIGHT_DB);
  const entry = connection.prepare('SELECT seq, hash FROM ledger ORDER BY seq DESC LIMIT 1').get() as {
    seq: number;
    hash: string;
  };
  connection.close();
  const store = openDatabase(env.KITWRIGHT_DB);
  const watch = ledgerWatch({ db: store, place: heads, now: () => new Date().toISOString() });
  await watch.look();
  store.close();
  expect(readFileSync(heads, 'utf8')).toContain(entry.hash);

  const made = await kitwright(['backup', '--json'], env);
  expect(made).toMatchObject({ exit: 0, err: '' });
  const path = join(env.KITWRIGHT_BACKUPS, JSON.parse(made.out).file);
  expect(await kitwright(['verify', path], env)).toMatchObject({ exit: 0, err: '' });
  const elsewhere = { ...env, KITWRIGHT_DB: join(folder, 'elsewhere.sqlite') };
  expect(await kitwright(['restore', path, '--yes'], elsewhere)).toMatchObject({ exit: 0, err: '' });
  // what was lost is told of the database, and makes no later backup worth less
  const told = await kitwright(['verify'], elsewhere);
  expect(told.exit).toBe(1);
  expect(told.out).toMatch(/written to the second place .* not there/);
  expect(await kitwright(['backup', '--to', join(folder, 'later')], elsewhere)).toMatchObject({ exit: 0 });
  expect(await kitwright(['restore', path, '--yes'], env)).toMatchObject({ exit: 0, err: '' });
  expect(await kitwright(['verify'], env)).toMatchObject({ exit: 0, err: '' });
});

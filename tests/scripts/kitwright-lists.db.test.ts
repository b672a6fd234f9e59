import { randomUUID } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, inject, onTestFinished, test } from 'vitest';
import { planAndKeepBy } from '@/app/_server/list-planner';
import { openDatabase, readAs } from '@/db/client';
import { listPeople, type Person } from '@/db/queries/people';
import { LISTS } from '@/lib/exchange/lists/lists';
import { kitwright as command } from '@/scripts/kitwright/kitwright';
import { DEMO_NOW, demoDatabaseFile } from '../setup/database';

const PASSWORD = 'larkmoor infirmary';
const STOCK_KEEPER = ['--as', 'Dilys Harrow'];

/** A demo hospital, the command in it as a person types it, and a folder for files. */
async function hospital(now: () => Date = () => new Date()) {
  const folder = mkdtempSync(join(inject('databaseFolder'), 'lists-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const database = await demoDatabaseFile();
  const run = async (words: string[], secret = PASSWORD) => {
    const said = { out: [] as string[], err: [] as string[] };
    const env = { ...process.env, PORT: '1', KITWRIGHT_DB: database } as NodeJS.ProcessEnv;
    const exit = await command(words, env, {
      say: (line) => said.out.push(line),
      refuse: (line) => said.err.push(line),
      secret: async () => secret,
      now,
    });
    return { exit, out: said.out.join('\n'), err: said.err.join('\n') };
  };
  const one = (query: string, path = database): unknown => {
    const connection = new Sqlite(path, { readonly: true });
    try {
      return connection.prepare(query).pluck().get();
    } finally {
      connection.close();
    }
  };
  const file = (name: string, text?: string) => {
    const path = join(folder, name);
    if (text !== undefined) writeFileSync(path, text);
    return path;
  };
  const entries = () => one('SELECT count(*) FROM ledger');
  return { run, one, file, entries, database };
}

const SCREW = {
  kind: 'screw',
  code: 'NW-1',
  name: 'New screw',
  makerId: 'Carrowby Implants',
  use: 'single use',
  packMultiple: '1',
  partsPerPiece: '1',
  screwKind: 'cortical',
  screwFamily: 'New family',
  threadMm: '3,5',
  lengthMm: '20',
};

/** A catalogue under its own headings. */
function catalogue(...lines: Partial<typeof SCREW>[]): string {
  const keys = Object.keys(SCREW) as (keyof typeof SCREW)[];
  const headings = keys.map((key) => LISTS.catalogue.columns.find((one) => one.key === key)?.heading ?? key);
  const rows = [headings, ...lines.map((line) => keys.map((key) => line[key] ?? ''))];
  return rows.map((cells) => cells.map((cell) => `"${cell}"`).join(',')).join('\r\n');
}

test('a list goes out, and comes in again as what is here already', async () => {
  const { run, file, entries } = await hospital();
  const head = entries();
  for (const [list, end] of [
    ['people', 'xlsx'],
    ['catalogue', 'csv'],
    ['stock', 'csv'],
  ]) {
    const path = file(`${list}.${end}`);
    const out = await run(['export', list ?? '', path, '--json']);
    expect(out).toMatchObject({ exit: 0, err: '' });
    const { rows } = JSON.parse(out.out);
    expect(rows).toBeGreaterThan(10);
    // for nobody else on the machine
    expect(statSync(path).mode & 0o077).toBe(0);
    const who = list === 'people' ? 'Edda Winslow' : 'Dilys Harrow';
    const back = await run(['import', list ?? '', path, '--as', who, '--json']);
    const { counts, problems } = JSON.parse(back.out);
    expect(problems).toEqual([]);
    expect(counts).toMatchObject({ new: 0, changed: 0 });
    expect(counts.unchanged).toBeGreaterThan(10);
    expect((await run(['export', list ?? '', path])).err).toMatch(/There is .* already/);
    expect((await run(['export', list ?? '', path, '--force'])).exit).toBe(0);
  }
  const asJson = file('holes.json');
  await run(['export', 'holes', asJson]);
  expect(JSON.parse(readFileSync(asJson, 'utf8'))).toMatchObject({ list: 'holes' });
  const template = await run(['export', 'sets', file('sets.csv'), '--template']);
  expect(template.out).toContain('its template');
  expect(entries()).toBe(head);
});

test('a list is tried, brought in by yes alone, known again, and taken back', async () => {
  const { run, one, file, entries } = await hospital();
  const path = file('new.csv', catalogue(SCREW));
  const words = ['import', 'catalogue', path, ...STOCK_KEEPER];
  const head = entries();
  const tried = await run(words);
  expect(tried).toMatchObject({ exit: 0, err: '' });
  expect(tried.out).toMatch(/^new: NW-1, New screw/m);
  expect(tried.out).toMatch(/1 new, 0 changed, 0 as they are/);
  expect(tried.out).toMatch(/Nothing is written yet/);
  expect(entries()).toBe(head);

  const done = await run([...words, '--yes', '--json']);
  expect(done).toMatchObject({ exit: 0, err: '' });
  const { importId } = JSON.parse(done.out).done;
  expect(one("SELECT name FROM items WHERE code = 'NW-1'")).toBe('New screw');
  expect(one('SELECT person_id FROM ledger ORDER BY seq DESC LIMIT 1')).toBe('person_dilys-harrow');
  const again = await run([...words, '--yes']);
  expect(again).toMatchObject({ exit: 0 });
  expect(again.out).toMatch(/there is nothing to bring in/);
  expect(again.out).toMatch(/This very file came in before, .* by Dilys Harrow/);

  const back = await run(['import', 'take-back', importId, ...STOCK_KEEPER]);
  expect(back).toMatchObject({ exit: 0, out: '1 taken back.' });
  expect(await run(['import', 'take-back', importId, ...STOCK_KEEPER])).toMatchObject({
    exit: 2,
    err: 'It was taken back already.',
  });
});

test('every wrong cell is said at once and nothing is written; what looks damaged is asked and answered', async () => {
  const { run, one, file, entries } = await hospital();
  const head = entries();
  const other = { ...SCREW, code: 'NW-2', name: '', makerId: 'No Such Maker', lengthMm: 'x' };
  const wrong = file('wrong.csv', catalogue(SCREW, other));
  const said = await run(['import', 'catalogue', wrong, ...STOCK_KEEPER, '--yes']);
  expect(said.exit).toBe(1);
  expect(said.out).toMatch(/✗ Row 3, “Name”: A name is needed\./);
  expect(said.out).toMatch(/✗ Row 3, “Length” \(“x”\): Is no number/);
  expect(said.out).toMatch(/A new maker is added by --maker “No Such Maker”/);
  expect(entries()).toBe(head);

  const spaced = file('spaced.csv', catalogue({ ...SCREW, code: 'N\u200bW-1' }));
  const words = ['import', 'catalogue', spaced, ...STOCK_KEEPER, '--yes'];
  const asked = await run(words);
  expect(asked.exit).toBe(1);
  const [, answer = ''] = /Answer: --repair (\S+?)\.? /.exec(`${asked.out} `) ?? [];
  expect(answer).toMatch(/^code:spaces/);
  expect(entries()).toBe(head);
  expect(await run([...words, '--repair', 'code:spaces'])).toMatchObject({ exit: 0 });
  expect(one("SELECT count(*) FROM items WHERE name = 'New screw'")).toBe(1);
});

test('a theatre list is tried and imported, and the same file does nothing twice', async () => {
  const { run, one, file, entries } = await hospital();
  const theatre = one('SELECT name FROM theatres ORDER BY name LIMIT 1');
  const day = new Date(Date.now() + 40 * 86_400_000).toISOString().slice(0, 10);
  const path = file(
    'list.csv',
    `Theatre,Date,Start,Minutes,Region,Side,Surgeon,Urgency\r\n${theatre},${day},09:00,60,Hand,Left,Tobias Wray,Booked\r\n`,
  );
  const words = ['import', 'theatre-list', path, '--as', 'Gwen Sallis'];
  const before = one('SELECT count(*) FROM cases');
  const head = entries();
  const tried = await run(words);
  expect(tried).toMatchObject({ exit: 0, err: '' });
  expect(tried.out).toMatch(/Row 2, new: .* Hand, left, Tobias Wray/);
  expect([one('SELECT count(*) FROM cases'), entries()]).toEqual([before, head]);
  const done = await run([...words, '--yes']);
  expect(done.out).toMatch(/Imported: 1 booked, 0 moved/);
  expect(one('SELECT count(*) FROM cases')).toBe(Number(before) + 1);
  expect((await run([...words, '--yes'])).out).toMatch(/was imported before/);
  expect(one('SELECT count(*) FROM cases')).toBe(Number(before) + 1);
});

test('who gets which set is planned anew after a theatre list came in, where planning gives sets to cases', async () => {
  const { run, one, file, database } = await hospital(() => DEMO_NOW);
  const theatre = one('SELECT name FROM theatres ORDER BY name LIMIT 1');
  const list = (name: string, start: string) =>
    file(
      name,
      `Theatre,Date,Start,Minutes,Region,Side,Surgeon,Urgency\r\n${theatre},2026-02-21,${start},60,Hand,Left,Tobias Wray,Booked\r\n`,
    );
  const words = (path: string) => ['import', 'theatre-list', path, '--as', 'Gwen Sallis', '--yes', '--json'];
  const byHand = await run(words(list('one.csv', '09:00')));
  expect(byHand).toMatchObject({ exit: 0, err: '' });
  expect(JSON.parse(byHand.out)).toMatchObject({ done: { booked: 1 }, planned: null });
  expect(one("SELECT count(*) FROM set_promises WHERE chosen_by = 'planning'")).toBe(0);

  const store = openDatabase(database);
  const manager = (await listPeople(store)).find(({ role }) => role === 'theatreManager') as Person;
  const kept = await planAndKeepBy({
    db: readAs(store, manager),
    person: manager,
    now: () => DEMO_NOW.toISOString(),
    newId: (prefix) => `${prefix}_${randomUUID()}`,
  });
  store.close();
  expect(kept).toMatchObject({ ok: true });
  const given = one("SELECT count(*) FROM set_promises WHERE chosen_by = 'planning'");
  expect(given).toBeGreaterThan(1);
  const connection = new Sqlite(database);
  connection
    .prepare(
      "DELETE FROM set_promises WHERE rowid = (SELECT max(rowid) FROM set_promises WHERE chosen_by = 'planning')",
    )
    .run();
  connection.close();
  const before = one("SELECT count(*) FROM ledger WHERE action = 'plan-sets'");

  const done = await run(words(list('two.csv', '11:00')));
  expect(done).toMatchObject({ exit: 0, err: '' });
  expect(JSON.parse(done.out)).toMatchObject({ done: { booked: 1 }, planned: expect.stringMatching(/\.$/) });
  // what was taken away is given again, signed by whoever brought the list in
  expect(one("SELECT count(*) FROM set_promises WHERE chosen_by = 'planning'")).toBe(given);
  expect(one("SELECT count(*) FROM ledger WHERE action = 'plan-sets'")).toBe(Number(before) + 1);
  expect(one("SELECT person_id FROM ledger WHERE action = 'plan-sets' ORDER BY seq DESC LIMIT 1")).toBe(
    'person_gwen-sallis',
  );
});

test('how to say by options what the file leaves open is said in words of the command', async () => {
  const { run, file } = await hospital();
  const path = file('own.csv', 'Naam;Rol;Remarks\r\nAvery Lind;Surgeon;none\r\n');
  const said = await run(['import', 'people', path, '--as', 'Edda Winslow']);
  expect(said.exit).toBe(1);
  expect(said.out).toContain('Columns of the file: 1 “Naam”, 2 “Rol”, 3 “Remarks”.');
  expect(said.out).toMatch(/Which of them says it: --column \w+=NUMBER/);
  expect(said.out).not.toMatch(/\b(above|below)\b/);
  const theatre = await run([
    'import',
    'theatre-list',
    file('theatre.csv', 'Theatre;Date;Who\r\nTheatre 1;03/04/2026;X\r\n'),
    '--as',
    'Gwen Sallis',
  ]);
  expect(theatre.exit).toBe(1);
  expect(theatre.out).toMatch(/Which of them says it: .*--column surgeon=NUMBER/);
  expect(theatre.out).not.toMatch(/\b(above|below)\b/);
  const out = file('template.csv');
  await run(['export', 'people', out, '--template']);
  const template = await run(['import', 'people', out, '--as', 'Edda Winslow']);
  expect(template).toMatchObject({ exit: 0, err: '' });
  expect(template.out).toMatch(/1 row left out\.\nEvery row is left out/);
});

test('everything goes into one archive, which an empty installation loads with the same head of the ledger', async () => {
  const { run, one, file } = await hospital();
  const archive = file('hospital.zip');
  const taken = JSON.parse((await run(['export', 'archive', archive, '--json'])).out);
  expect(taken.tables).toBeGreaterThan(50);
  const anew = file('anew.sqlite');
  const loaded = await run(['import', 'archive', archive, '--db', anew, '--json']);
  expect(JSON.parse(loaded.out).ledgerHead).toEqual(taken.ledgerHead);
  const last = 'SELECT hash FROM ledger ORDER BY seq DESC LIMIT 1';
  expect(one(last, anew)).toEqual(one(last));
  // never over what is there
  expect(await run(['import', 'archive', archive, '--db', anew])).toMatchObject({ exit: 2 });
});

test('who may not, what is not there and what is not understood is said, and nothing is written', async () => {
  const { run, file, entries } = await hospital();
  const head = entries();
  const path = file('new.csv', catalogue(SCREW));
  const bad: [string[], RegExp, string?][] = [
    [['import', 'catalogue', path], /Say as whom/],
    [['import', 'catalogue', path, ...STOCK_KEEPER], /not the password/, 'wrong'],
    [['import', 'catalogue', path, '--as', 'Ruth Okonjo', '--yes'], /Ruth Okonjo can’t bring in this list/],
    [['import', 'theatre-list', path, '--as', 'Wren Adeyemi', '--yes'], /Wren Adeyemi/],
    [['import', 'catalogue', `${path}.not`, ...STOCK_KEEPER], /There is no file/],
    [['import', 'nothing', path, ...STOCK_KEEPER], /Usage: kitwright import LIST FILE/],
    [
      ['import', 'catalogue', path, ...STOCK_KEEPER, '--urgency', 'planned'],
      /--urgency says nothing of this/,
    ],
    [['import', 'catalogue', path, ...STOCK_KEEPER, '--column', 'x=1'], /--column is NAME=NUMBER/],
    [
      ['import', 'catalogue', path, ...STOCK_KEEPER, '--decimals', 'dot'],
      /--decimals is one of point, comma/,
    ],
    [['import', 'catalogue', file('empty.csv', ''), ...STOCK_KEEPER], /The file is empty/],
    [['import', 'take-back', 'import_none', ...STOCK_KEEPER], /There is no such list/],
    [['export', 'catalogue', file('a.ods')], /ends in \.xlsx, \.csv or \.json/],
    [['export', 'nothing', file('a.csv')], /Usage: kitwright export/],
    [['export', 'catalogue', file('a.json'), '--template'], /A template is XLSX or CSV/],
  ];
  for (const [words, says, secret] of bad) {
    const said = await run(words, secret);
    expect([said.exit, said.out], words.join(' ')).toEqual([2, '']);
    expect(said.err, words.join(' ')).toMatch(says);
  }
  expect(existsSync(file('a.ods'))).toBe(false);
  expect(entries()).toBe(head);
});

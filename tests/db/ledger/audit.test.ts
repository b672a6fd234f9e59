import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openDatabase } from '@/db/client';
import { appendLedger, findLedgerBreak, type LedgerEntry } from '@/db/ledger';
import { auditLedgerFile, openLedgerFile } from '@/db/ledgerFile';
import { headsPath } from '@/db/ledgerHeadsFile';
import { ledgerWatch } from '@/db/ledgerWatch';
import { exportLine } from '@/lib/ledger/exportFile';
import { readHeads } from '@/lib/ledger/heads';
import { verifyLedger } from '@/scripts/ledger/standalone-verify.mjs';
import { verifyCommand } from '@/scripts/ledger/verifyCommand';
import { someLedger } from '../../fixtures/ledgerRows';
import { emptyDatabaseFile } from '../../setup/database';

const T0 = '2026-01-14T06:30:00.000Z';
const entry = (more: Partial<LedgerEntry> = {}): LedgerEntry => ({
  doneAt: T0,
  enteredAt: T0,
  personId: null,
  action: 'open-set',
  subjectKind: 'set',
  subjectId: 'set_1',
  detail: { found: 2, caseId: 'case_7' },
  ...more,
});

/** A database with `count` entries, its heads written after each `every`, closed. */
async function hospital(count: number, every = 3) {
  const path = emptyDatabaseFile();
  const place = headsPath(path, undefined);
  onTestFinished(() => rmSync(place, { force: true }));
  const db = openDatabase(path);
  let minute = 0;
  const now = () => new Date(Date.parse(T0) + minute * 61_000).toISOString();
  const watch = ledgerWatch({ db, place, now });
  for (let at = 1; at <= count; at += 1) {
    minute += 1;
    await db.tx(async (write) =>
      appendLedger(write, entry({ subjectId: `set_${at}`, detail: { found: at } })),
    );
    if (at % every === 0) await watch.look();
  }
  watch.end();
  db.close();
  return {
    path,
    place,
    audit: () => auditLedgerFile(path, existsSync(place) ? readFileSync(place, 'utf8') : ''),
  };
}

/** Somebody with the file and a tool of their own. */
function tamper(path: string, sql: string): void {
  const connection = new Sqlite(path);
  connection.exec(sql);
  connection.close();
}
const WITHOUT_GUARDS = 'DROP TRIGGER ledger_is_never_changed; DROP TRIGGER ledger_is_never_shortened;';
const GUARDS_BACK = `
  CREATE TRIGGER ledger_is_never_changed BEFORE UPDATE ON ledger BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;
  CREATE TRIGGER ledger_is_never_shortened BEFORE DELETE ON ledger BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;`;

describe('the ledger in the database', () => {
  it('refuses to be changed, shortened or replaced, and so do its lists', async () => {
    const { path } = await hospital(3);
    for (const sql of [
      "UPDATE ledger SET action = 'x' WHERE seq = 1",
      'DELETE FROM ledger WHERE seq = 3',
      "INSERT OR REPLACE INTO ledger SELECT seq, done_at, entered_at, person_id, 'x', subject_kind, subject_id, detail, previous_hash, hash, form FROM ledger WHERE seq = 2",
      "UPDATE ledger_things SET thing = 'set_9'",
      'DELETE FROM ledger_things',
      "UPDATE ledger_heads SET hash = 'x'",
      'DELETE FROM ledger_heads',
    ]) {
      const connection = new Sqlite(path);
      // as every connection of the program has it: without it REPLACE would not ask the triggers
      connection.pragma('recursive_triggers = ON');
      expect(() => connection.exec(sql), sql).toThrow(/append-only|stay/);
      connection.close();
    }
  });

  it('stores the very text that is hashed, in canonical form, whatever order it was handed in', async () => {
    const path = emptyDatabaseFile();
    const db = openDatabase(path);
    onTestFinished(() => db.close());
    await db.tx(async (write) => {
      await appendLedger(write, entry({ detail: { b: 1, a: { d: undefined, c: 'half \ud83d pair' } } }));
    });
    const file = openLedgerFile(path);
    const [row] = [...file.rows()];
    file.close();
    expect(row?.detailText).toBe('{"a":{"c":"half \uFFFD pair"},"b":1}');
    expect(row?.form).toBe(2);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('finds by what an entry names: subject, person, and what its detail speaks of', async () => {
    const path = emptyDatabaseFile();
    const db = openDatabase(path);
    await db.tx(async (write) => {
      const detail = {
        packs: [{ packId: 'pack_2', setId: 'set_4' }],
        turnId: 'turn_1',
        checkedBy: 'person_8',
      };
      await appendLedger(write, entry({ subjectKind: 'load', subjectId: 'load_1', detail }));
    });
    db.close();
    const connection = new Sqlite(path, { readonly: true });
    const things = connection.prepare('SELECT thing FROM ledger_things ORDER BY thing').pluck().all();
    connection.close();
    expect(things).toEqual(['load_1', 'pack_2', 'person_8', 'set_4']);
  });
});

describe('an audit of the file', () => {
  it('is content with a ledger that was only written to, in use or not', async () => {
    const { audit } = await hospital(10);
    expect(audit()).toMatchObject({
      entries: 10,
      faults: [],
      more: 0,
      guardsGone: [],
      damaged: null,
      namesOff: 0,
      headsGone: 0,
      unreadableHeads: [],
    });
    expect(audit().heads).toBeGreaterThanOrEqual(4);
  });

  it.each([
    [
      'a changed person',
      "UPDATE ledger SET person_id = NULL, action = 'pack-set' WHERE seq = 4",
      ['content'],
    ],
    [
      'a detail that reads the same',
      "UPDATE ledger SET detail = replace(detail, ':', ': ') WHERE seq = 4",
      ['content'],
    ],
    [
      'an entry taken out',
      'DELETE FROM ledger_things WHERE seq = 4; DELETE FROM ledger WHERE seq = 4',
      ['number', 'previous'],
    ],
    ['an entry called of the earlier form', 'UPDATE ledger SET form = 1 WHERE seq = 4', ['form']],
    [
      'the tail cut off',
      'DELETE FROM ledger_things WHERE seq > 8; DELETE FROM ledger WHERE seq > 8',
      ['headBeyond'],
    ],
  ])('sees %s, with the guards put back as they were', async (_, sql, kinds) => {
    const { path, audit } = await hospital(10);
    tamper(
      path,
      `PRAGMA foreign_keys = OFF; DROP TRIGGER ledger_things_are_never_deleted; ${WITHOUT_GUARDS} ${sql}; ${GUARDS_BACK}
      CREATE TRIGGER ledger_things_are_never_deleted BEFORE DELETE ON ledger_things BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;`,
    );
    const found = audit();
    expect(found.guardsGone).toEqual([]);
    expect([...new Set(found.faults.map(({ kind }) => kind))]).toEqual(expect.arrayContaining(kinds));
  });

  it('sees guards that are gone or weakened, names taken away, and heads taken out of the second place', async () => {
    const { path, place, audit } = await hospital(10);
    tamper(
      path,
      `DROP TRIGGER ledger_is_never_changed;
      CREATE TRIGGER ledger_is_never_changed BEFORE UPDATE ON ledger WHEN old.seq > 99 BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;
      DROP TRIGGER ledger_things_are_never_deleted; DELETE FROM ledger_things WHERE seq = 2;`,
    );
    const lines = readFileSync(place, 'utf8').split('\n');
    writeFileSync(place, `${lines[0]}\nnot a head\n`);
    expect(audit()).toMatchObject({
      guardsGone: ['ledger_is_never_changed', 'ledger_things_are_never_deleted'],
      namesOff: 1,
      unreadableHeads: [2],
    });
    expect(audit().headsGone).toBeGreaterThanOrEqual(2);
  });

  it('goes by the stand-alone verifier too: the export of a file reads whole, with its heads', async () => {
    const { path, place } = await hospital(7);
    const file = openLedgerFile(path);
    const ledger = Buffer.from([...file.rows()].map(exportLine).join(''));
    file.close();
    const heads = readFileSync(place, 'utf8');
    expect(verifyLedger({ ledger, heads })).toMatchObject({ entries: 7, faults: [] });
    const cut = Buffer.from(ledger.toString().split('\n').slice(0, 5).join('\n').concat('\n'));
    expect(verifyLedger({ ledger: cut }).faults).toEqual([]);
    expect(verifyLedger({ ledger: cut, heads }).faults).not.toEqual([]);
  });
});

describe('a database of the first release', () => {
  it('goes on verifying, is sealed by its next entry, and then shows a text that merely reads the same', async () => {
    const path = emptyDatabaseFile();
    const connection = new Sqlite(path);
    connection.pragma('foreign_keys = OFF');
    const put = connection.prepare(
      `INSERT INTO ledger (seq, form, done_at, entered_at, person_id, action, subject_kind, subject_id, detail, previous_hash, hash)
       VALUES (@seq, @form, @doneAt, @enteredAt, @personId, @action, @subjectKind, @subjectId, @detailText, @previousHash, @hash)`,
    );
    for (const row of someLedger(5, 0).filter(({ form }) => form === 1)) put.run(row);
    connection.close();
    const db = openDatabase(path);
    expect(await findLedgerBreak(db.read)).toBeNull();
    await db.tx(async (write) => appendLedger(write, entry({ personId: null })));
    await db.tx(async (write) => appendLedger(write, entry({ personId: null })));
    expect(await findLedgerBreak(db.read)).toBeNull();
    db.close();
    const file = openLedgerFile(path);
    expect([...file.rows()].map(({ form, action }) => `${form} ${action}`).slice(5)).toEqual([
      '2 seal-earlier-entries',
      '2 open-set',
      '2 open-set',
    ]);
    file.close();
    expect(auditLedgerFile(path, '').faults).toEqual([]);
    const turned = JSON.stringify(
      Object.fromEntries(
        Object.entries(JSON.parse(someLedger(5, 0)[1]?.detailText ?? '') as object).reverse(),
      ),
    );
    tamper(path, `${WITHOUT_GUARDS} UPDATE ledger SET detail = '${turned}' WHERE seq = 2; ${GUARDS_BACK}`);
    expect(auditLedgerFile(path, '').faults.map(({ kind }) => kind)).toEqual(['seal']);
  });
});

describe('the watch', () => {
  it('tells of a broken chain while the program runs, and of a ledger that was replaced', async () => {
    const { path, place } = await hospital(6);
    const db = openDatabase(path);
    onTestFinished(() => db.close());
    const watch = ledgerWatch({ db, place, now: () => '2026-01-14T08:00:00.000Z' });
    await watch.look();
    expect(watch.standing()).toMatchObject({
      checked: { seq: 6, at: '2026-01-14T08:00:00.000Z' },
      fault: null,
      problem: null,
    });
    tamper(
      path,
      `PRAGMA foreign_keys = OFF; ${WITHOUT_GUARDS} UPDATE ledger SET hash = replace(hash, substr(hash, 1, 4), 'beef') WHERE seq = 6`,
    );
    await watch.look();
    expect(watch.standing().fault).toEqual({ kind: 'replaced' });
  });

  it('a second place that cannot be written to holds up nothing and is told', async () => {
    const { path } = await hospital(2);
    const db = openDatabase(path);
    onTestFinished(() => db.close());
    const watch = ledgerWatch({ db, place: '/proc/nowhere/heads.jsonl', now: () => T0 });
    await watch.look();
    expect(watch.standing()).toMatchObject({ checked: { seq: 2 }, written: null });
    expect(watch.standing().problem).toMatch(/ENOENT|EACCES/);
    await expect(db.tx(async (write) => appendLedger(write, entry()))).resolves.toMatchObject({ seq: 3 });
  });

  it('ends a line that a crash cut short before it writes its own', async () => {
    const { path, place, audit } = await hospital(4);
    const whole = readFileSync(place, 'utf8');
    writeFileSync(place, whole.slice(0, -50));
    expect(readHeads(readFileSync(place, 'utf8')).torn).toBe(true);
    const db = openDatabase(path);
    const watch = ledgerWatch({ db, place, now: () => '2026-01-14T09:00:00.000Z' });
    await watch.look();
    db.close();
    expect(readFileSync(place, 'utf8').split('\n')).toHaveLength(whole.split('\n').length + 1);
    expect(audit()).toMatchObject({ faults: [], unreadableHeads: [] });
  });
});

describe('the commands', () => {
  function verify(...given: string[]) {
    const said: string[] = [];
    const say = (line: string) => said.push(line);
    return { code: verifyCommand(given, { NODE_ENV: 'test' }, { say, refuse: say }), said: said.join('\n') };
  }

  it('verify says in sentences what is so, with an exit code; an export goes to an auditor as it is', async () => {
    const { path, place } = await hospital(5);
    const good = verify('--db', path);
    expect(good.said).toContain('5 entries read');
    expect(good.said).toContain('Nothing was changed');
    expect(good.code).toBe(0);
    const exported = `${path}.jsonl`;
    onTestFinished(() => rmSync(exported, { force: true }));
    const file = openLedgerFile(path);
    writeFileSync(exported, [...file.rows()].map(exportLine).join(''));
    file.close();
    const alone = execFileSync(
      process.execPath,
      ['scripts/ledger/standalone-verify.mjs', exported, '--heads', place],
      { encoding: 'utf8' },
    );
    expect(alone).toContain('5 entries read');
    expect(alone).toContain('Nothing was changed.');
    tamper(
      path,
      `PRAGMA foreign_keys = OFF; ${WITHOUT_GUARDS} DELETE FROM ledger WHERE seq = 5; ${GUARDS_BACK}`,
    );
    const bad = verify('--db', path);
    expect(bad.said).toContain('The ledger ends at entry 4');
    expect(bad.code).toBe(1);
    renameSync(place, `${place}.away`);
    onTestFinished(() => rmSync(`${place}.away`, { force: true }));
    expect(verify('--db', path).said).toContain('entries cut off at the end cannot be seen');
    const head = /entry (\d+ · [0-9a-f ]+) \(/.exec(good.said)?.[1] ?? '';
    expect(verify('--db', path, '--head', head), 'the head on paper is enough').toMatchObject({ code: 1 });
    expect(verify('--db', path, '--head', '5:beef').code).toBe(2);
    expect(verify('--db', join(path, 'nothing')).code).toBe(2);
  });
});

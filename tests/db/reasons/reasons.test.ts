import { eq, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { addReason } from '@/db/operations/reasons/add-reason';
import { changeReason } from '@/db/operations/reasons/change-reason';
import { orderReasons } from '@/db/operations/reasons/order-reasons';
import { listPeople, type Person } from '@/db/queries/people';
import { reasonsOf } from '@/db/queries/reasons/reasons';
import { ledger, reasonCodes } from '@/db/schema';
import { type NewId, reasonId } from '@/lib/identity/ids';
import { demoDatabase, emptyDatabase } from '../../setup/database';

const NOW = '2026-01-14T08:00:00.000Z';
const FELL = reasonId.parse('reason_demo-w3');
let db: Database;
let manager: Person;
let scrub: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_made-${made}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  const people = await listPeople(db);
  const of = (id: string) => people.find((one) => one.id === `person_${id}`) as Person;
  [manager, scrub] = [of('gwen-sallis'), of('ruth-okonjo')];
});

const add = (reason: object, person = manager) => addReason({ db, now: NOW, newId, person, reason });
const change = (change: object, person = manager, id = FELL) =>
  changeReason({ db, now: NOW, person, reasonId: id, change });
const codes = async (kind: string) =>
  (await reasonsOf(db.read)).filter((one) => one.kind === kind).map(({ code }) => code);
const saidOf = (outcome: Awaited<ReturnType<typeof add>>) =>
  outcome.ok ? [] : outcome.refusal.problems.map(({ path, code }) => `${path.join('.')} ${code}`);

describe('the hospital’s own reasons', () => {
  it('begin empty in a new installation', async () => {
    expect(await reasonsOf(emptyDatabase().read)).toEqual([]);
  });

  it('are added at the end of their list by a theatre manager, with a ledger entry, and by nobody who may not', async () => {
    const before = await codes('waste');
    const done = await add({ kind: 'waste', code: 'w9', words: 'the implant would not hold' });
    expect(done.ok).toBe(true);
    expect(await codes('waste')).toEqual([...before, 'W9']);
    expect(await add({ kind: 'waste', code: 'X', words: 'x' }, scrub)).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'add-reason'));
    expect(entries.map(({ detail }) => detail)).toEqual([
      { kind: 'waste', code: 'W9', words: 'the implant would not hold' },
    ]);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('are refused with everything that is wrong at once; a code that was retired is never given again', async () => {
    expect(saidOf(await add({ kind: 'no', code: 'a b', words: '' }))).toEqual([
      'kind invalid-value',
      'code invalid-format',
      'words too-small',
    ]);
    expect(saidOf(await add({ kind: 'waste', code: 'W6', words: 'opened by mistake' }))).toEqual([
      'code code-taken',
      'words words-taken',
    ]);
    // the other list has codes of its own
    expect((await add({ kind: 'delay', code: 'W6', words: 'opened by mistake' })).ok).toBe(true);
  });

  it('are retired and put back, each once, and only as they were seen', async () => {
    expect(await change({ inUse: false, baseRevision: 1 })).toEqual({ ok: true, value: { revision: 2 } });
    expect((await reasonsOf(db.read)).find(({ id }) => id === FELL)).toMatchObject({
      inUse: false,
      words: 'fell or touched what is not sterile',
    });
    expect(await change({ inUse: true, baseRevision: 1 })).toMatchObject({
      refusal: { because: 'conflict' },
    });
    expect(await change({ inUse: false, baseRevision: 2 })).toMatchObject({ refusal: { because: 'frozen' } });
    expect(await change({ inUse: true, baseRevision: 2 }, scrub)).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    // its words were taken by another meanwhile
    expect((await add({ kind: 'waste', code: 'W8', words: 'fell or touched what is not sterile' })).ok).toBe(
      true,
    );
    const back = await change({ inUse: true, baseRevision: 2 });
    expect(saidOf(back as never)).toEqual(['inUse words-taken']);
    expect(
      await change({ inUse: true, baseRevision: 9 }, manager, reasonId.parse('reason_none')),
    ).toMatchObject({
      refusal: { because: 'notFound' },
    });
  });

  it('are put into another order, whole, and only from the one that was seen', async () => {
    const seen = (await reasonsOf(db.read)).filter(({ kind }) => kind === 'delay').map(({ id }) => id);
    const ids = [...seen].reverse();
    const order = (body: object, person = manager) => orderReasons({ db, now: NOW, person, order: body });
    expect(await order({ kind: 'delay', seen, ids: ids.slice(1) })).toMatchObject({
      refusal: { because: 'conflict' },
    });
    expect((await order({ kind: 'delay', seen, ids })).ok).toBe(true);
    expect(await codes('delay')).toEqual(['D5', 'D4', 'D3', 'D2', 'D1']);
    // somebody who saw the old order moves nothing
    expect(await order({ kind: 'delay', seen, ids })).toMatchObject({ refusal: { because: 'conflict' } });
    expect(await order({ kind: 'delay', seen: ids, ids }, scrub)).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    expect(await order({ kind: 'delay', seen: ids, ids })).toMatchObject({ refusal: { because: 'frozen' } });
  });

  it('keep their code and words whatever the program does, and are never deleted', () => {
    const write = (statement: ReturnType<typeof sql>) =>
      db.tx(async (one) => {
        await one.run(statement);
      });
    return Promise.all([
      expect(write(sql`UPDATE reason_codes SET words = 'else' WHERE id = ${FELL}`)).rejects.toThrow(),
      expect(write(sql`UPDATE reason_codes SET code = 'W7' WHERE id = ${FELL}`)).rejects.toThrow(),
      expect(write(sql`DELETE FROM reason_codes WHERE id = ${FELL}`)).rejects.toThrow(),
    ]).then(async () => {
      const [row] = await db.read.select().from(reasonCodes).where(eq(reasonCodes.id, FELL));
      expect(row).toMatchObject({ code: 'W3', words: 'fell or touched what is not sterile' });
    });
  });
});

import { and, desc, eq } from 'drizzle-orm';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { planAgain } from '@/app/_server/plan-again';
import { planAndKeep } from '@/app/_server/theatre-planning';
import type { Database } from '@/db/client';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { keepPlan } from '@/db/operations/theatre/keep-plan';
import { holdSet } from '@/db/operations/turns/hold-set';
import { listPeople, type Person } from '@/db/queries/people';
import { cases, ledger, setPromises, sets } from '@/db/schema';
import { caseId, type NewId, setId } from '@/lib/identity/ids';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

// the marker of server files means nothing outside of the build
vi.mock('server-only', () => ({}));

const NOW = DEMO_NOW.toISOString();
let db: Database;
let manager: Person;
let technician: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

beforeEach(async () => {
  vi.useFakeTimers({ now: DEMO_NOW, toFake: ['Date'] });
  db = await demoDatabase();
  const people = await listPeople(db);
  const one = (role: string) => people.find((person) => person.role === role) as Person;
  [manager, technician] = [one('theatreManager'), one('technician')];
});
afterEach(() => {
  vi.useRealTimers();
});

const promises = () => db.read.select().from(setPromises).orderBy(setPromises.caseId, setPromises.setId);
const plain = (list: Awaited<ReturnType<typeof promises>>) =>
  list.map(({ caseId: one, setId: set, chosenBy }) => `${one} ${set} ${chosenBy}`);
const planEntries = () => db.read.select().from(ledger).where(eq(ledger.action, 'plan-sets'));

async function hold(id: string, person = technician) {
  const [set] = await db.read.select().from(sets).where(eq(sets.id, id));
  if (!set) throw new Error('no such set');
  const held = await holdSet({
    db,
    now: NOW,
    newId,
    person,
    setId: setId.parse(id),
    baseRevision: set.revision,
    because: 'wrapWetTornOrUnsealed',
    note: 'A tear at the corner',
  } as Parameters<typeof holdSet>[0]);
  if (!held.ok) throw new Error(held.refusal.problems[0]?.message);
}
async function cancel(id: string) {
  const [row] = await db.read.select().from(cases).where(eq(cases.id, id));
  if (!row) throw new Error('no such case');
  const request = { db, now: NOW, newId, person: manager, baseRevision: row.revision };
  expect(await cancelCase({ ...request, caseId: caseId.parse(id), because: 'Surgeon away' })).toMatchObject({
    ok: true,
  });
}

it('does nothing where nobody lets planning give sets to cases', async () => {
  const before = await promises();
  await cancel('case_lm-26-d3xe');
  expect(await planAgain(db, manager, 'cancel-case')).toBeNull();
  expect(await promises()).toEqual(before.filter((one) => one.caseId !== 'case_lm-26-d3xe'));
  expect(await planEntries()).toEqual([]);
});

it('moves what must move and nothing else, never what a person chose, signed by whoever changed the list', async () => {
  await planAndKeep(db, manager);
  const before = await promises();
  const given = before.filter(({ chosenBy }) => chosenBy === 'planning');
  expect(given.length).toBeGreaterThan(3);
  // a set that planning gave, and no person chose for anybody
  const gone = given.find(
    ({ setId: set }) => !before.some((one) => one.setId === set && one.chosenBy === 'person'),
  );
  if (!gone) throw new Error('every set is somebody’s choice');
  await hold(gone.setId);
  const planned = await planAgain(db, technician, 'hold-set');
  const after = await promises();
  // what a person chose is as it was
  expect(plain(after)).toEqual(
    expect.arrayContaining(plain(before.filter(({ chosenBy }) => chosenBy === 'person'))),
  );
  expect(after.some(({ setId: set, chosenBy }) => set === gone.setId && chosenBy === 'planning')).toBe(false);
  const [row] = await db.read.select().from(cases).where(eq(cases.id, gone.caseId));
  const told = [...(planned?.change?.changed ?? []), ...(planned?.change?.without ?? [])];
  expect(told).toContain(row?.reference);
  // all that ended is told, and only of cases whose plan is another one
  const lost = before.filter((one) => !plain(after).includes(plain([one])[0] ?? ''));
  const byId = new Map((await db.read.select().from(cases)).map((one) => [one.id, one.reference]));
  expect(new Set(lost.map(({ caseId: one }) => byId.get(one)))).toEqual(new Set(told));
  const entries = (await planEntries()).filter(({ personId }) => personId === technician.id);
  const [cause] = await db.read
    .select()
    .from(ledger)
    .where(and(eq(ledger.action, 'hold-set'), eq(ledger.personId, technician.id)))
    .orderBy(desc(ledger.seq));
  expect(entries.length).toBeGreaterThan(0);
  for (const { detail } of entries)
    expect(detail).toMatchObject({ follows: { entry: cause?.seq, action: 'hold-set' } });
});

it('changes nothing when the list has not changed, and says so', async () => {
  await planAndKeep(db, manager);
  await cancel('case_lm-26-u9dx');
  const before = await promises();
  expect(await planAgain(db, manager, 'cancel-case')).toEqual({
    change: { gained: [], changed: [], without: [] },
    sentence: 'No other promise had to move.',
  });
  expect(await promises()).toEqual(before);
});

it('lets nobody sign that did not change the list', async () => {
  await planAndKeep(db, manager);
  await cancel('case_lm-26-d3xe');
  const [entry] = await db.read.select().from(ledger).orderBy(desc(ledger.seq)).limit(1);
  const all = await promises();
  const asked = {
    db,
    now: NOW,
    newId,
    person: technician,
    plan: new Map(),
    madeFrom: new Set(all.map(({ id }) => id)),
    round: { leadMinutes: 60, roundMinutes: () => 345 },
  };
  // the entry is the manager's
  for (const follows of [entry?.seq ?? 0, 0, 999_999])
    expect(await keepPlan({ ...asked, follows })).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
  expect(await keepPlan(asked)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
  expect(await planAgain(db, technician, 'cancel-case')).toBeNull();
});

it('leaves the change as it is where planning itself fails', async () => {
  await planAndKeep(db, manager);
  await cancel('case_lm-26-d3xe');
  const before = await promises();
  const broken = { ...db, tx: () => Promise.reject(new Error('the disk is full')) } as unknown as Database;
  expect(await planAgain(broken, manager, 'cancel-case')).toMatchObject({ change: null });
  expect(await promises()).toEqual(before);
});

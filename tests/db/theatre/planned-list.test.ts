import { eq } from 'drizzle-orm';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { planList, plannedList } from '@/app/_server/theatre-planning';
import type { Database } from '@/db/client';
import { appendLedger } from '@/db/ledger';
import { holdSet } from '@/db/operations/turns/hold-set';
import { listPeople, type Person } from '@/db/queries/people';
import { sets } from '@/db/schema';
import { type NewId, setId } from '@/lib/identity/ids';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = DEMO_NOW.toISOString();
let db: Database;
let technician: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_planned-${made}`;
};

beforeEach(async () => {
  // a minute that has begun: what is asked again in it is asked as of its beginning
  vi.useFakeTimers({ now: new Date(DEMO_NOW.getTime() + 20_000), toFake: ['Date'] });
  db = await demoDatabase();
  technician = (await listPeople(db)).find(({ role }) => role === 'technician') as Person;
});
afterEach(() => {
  vi.useRealTimers();
});

/** An act that can change a kit, of which nothing in the store was changed. */
const somethingElse = () =>
  db.tx((write) =>
    appendLedger(write, {
      ...{ doneAt: NOW, enteredAt: NOW, personId: null, action: 'add-maker', subjectKind: 'maker' },
      ...{ subjectId: 'maker_another', detail: {} },
    }),
  );

it('after an act that changes nothing it rests on, who gets which set is not worked out again', async () => {
  const first = await plannedList(db);
  expect(first.answer?.proof).toEqual({ kind: 'optimal' });
  await somethingElse();
  vi.setSystemTime(new Date(DEMO_NOW.getTime() + 50_000));
  const second = await plannedList(db);
  expect(second).not.toBe(first);
  expect(second.answer).toBe(first.answer);
  expect(second.facts).toEqual(first.facts);
});

it('after one that takes a set away it is another answer, the one of planning anew', async () => {
  const first = await plannedList(db);
  const given = first.answer?.assignments[0]?.sets[0]?.set;
  const [row] = await db.read
    .select()
    .from(sets)
    .where(eq(sets.code, given ?? ''));
  if (!row) throw new Error('the demo gives sets to cases');
  const held = await holdSet({
    db,
    now: NOW,
    newId,
    person: technician,
    setId: setId.parse(row.id),
    baseRevision: row.revision,
    because: 'wrapWetTornOrUnsealed',
    note: 'A tear at the corner',
  } as Parameters<typeof holdSet>[0]);
  expect(held.ok).toBe(true);
  const second = await plannedList(db);
  expect(second.answer).not.toEqual(first.answer);
  expect(JSON.stringify(second.answer?.assignments)).not.toContain(`"${given}"`);
  const anew = await planList(db);
  expect(second.answer?.served).toBe(anew.answer?.served);
  expect(second.answer?.aims.unservedBooked).toBe(anew.answer?.aims.unservedBooked);
});

it('the next minute is planned as of itself', async () => {
  const first = await plannedList(db);
  vi.setSystemTime(new Date(DEMO_NOW.getTime() + 65_000));
  const second = await plannedList(db);
  expect(Date.parse(second.facts.now) - Date.parse(first.facts.now)).toBe(60_000);
});

import { eq } from 'drizzle-orm';
import { beforeEach, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { bookCase } from '@/db/operations/book-case';
import { renamePlanStart } from '@/db/operations/cards/rename-plan-start';
import { retirePlanStart } from '@/db/operations/cards/retire-plan-start';
import { savePlanStart } from '@/db/operations/cards/save-plan-start';
import { setPlanRemarks } from '@/db/operations/set-plan-remarks';
import { bookingChoices, findCase, listCases, listPlanVersions } from '@/db/queries/cases';
import { listPeople, type Person } from '@/db/queries/people';
import { remarksSwitchedOff } from '@/db/queries/planner';
import { listPlanStarts } from '@/db/queries/plans';
import { cases, items, setPromises } from '@/db/schema';
import type { NewId, StartId } from '@/lib/identity/ids';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { parseBooking } from '@/lib/theatre/booking';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
const TODAY = plainDate.parse('2026-01-14');
let db: Database;
let people: Person[];
let ids = 0;
const newId: NewId = (prefix) => {
  ids += 1;
  return `${prefix}_test-${ids}`;
};
const acting = (role: string) => {
  const person = people.find((one) => one.role === role);
  if (!person) throw new Error(`nobody is ${role}`);
  return person;
};

beforeEach(async () => {
  db = await demoDatabase();
  people = await listPeople(db);
});

async function booking(more: object = {}) {
  const { theatres, surgeons } = await bookingChoices(db);
  const parsed = parseBooking(
    {
      theatreId: theatres[0]?.id,
      date: '2026-03-02',
      time: '08:30',
      minutes: 90,
      region: 'ankle',
      limb: 'left',
      surgeonId: surgeons[0]?.id,
      urgency: 'booked',
      startId: null,
      ...more,
    },
    'Europe/London',
  );
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  return parsed.value;
}
const book = async (more: object = {}, person = acting('surgeon'), draw = () => [1, 2, 3, 4]) =>
  bookCase({ db, now: NOW, newId, draw, hospitalLetters: 'LM', person, booking: await booking(more) });

it('books a case under a reference of its own', async () => {
  const booked = await book();
  if (!booked.ok) throw new Error('not booked');
  expect(booked.value.reference).toBe('LM-26-3456');
  expect(await findCase(db, booked.value.id)).toMatchObject({
    region: 'ankle',
    startsAt: '2026-03-02T08:30:00.000Z',
  });
  expect(await listPlanVersions(db, booked.value.id)).toEqual([]);
});

it('draws again when a reference is taken', async () => {
  await book();
  const draws = [
    [1, 2, 3, 4],
    [5, 6, 7, 8],
  ];
  const second = await book({ time: '14:00' }, acting('surgeon'), () => draws.shift() ?? []);
  expect(second).toMatchObject({ ok: true, value: { reference: 'LM-26-789A' } });
});

it('refuses a theatre that is taken, and says by which case', async () => {
  await book();
  expect(await book({ time: '09:00' })).toMatchObject({
    problems: [{ path: ['time'], message: expect.stringContaining('LM-26-3456') }],
  });
  expect(await book({ time: '10:00' }, acting('surgeon'), () => [9, 9, 9, 9])).toMatchObject({ ok: true });
});

it('names an unknown theatre and a person who is no surgeon in one answer', async () => {
  const refused = await book({ theatreId: 'theatre_none', surgeonId: acting('technician').id });
  expect(refused.ok ? [] : refused.problems.map(({ code }) => code)).toEqual([
    'theatre-unknown',
    'not-a-surgeon',
  ]);
});

it('is not for a technician', async () => {
  expect(await book({}, acting('technician'))).toMatchObject({ problems: [{ code: 'not-permitted' }] });
});

it('begins the plan from a start, on the limb of the case', async () => {
  const owner = people.find(({ id }) => id === 'person_ines-halloran');
  if (!owner) throw new Error('the demo has no such surgeon');
  const [start] = await listPlanStarts(db, owner.id);
  if (!start) throw new Error('the demo has no start');
  for (const limb of ['left', 'right']) {
    const booked = await book(
      { limb, startId: start.id, time: limb === 'left' ? '08:30' : '12:00' },
      owner,
      () => [limb.length, 1, 1, 1],
    );
    if (!booked.ok) throw new Error(booked.problems[0]?.message);
    const [plan] = await listPlanVersions(db, booked.value.id);
    expect(plan).toMatchObject({
      status: 'draft',
      version: 1,
      construct: { limb, plates: start.construct.plates },
    });
  }
  expect(await book({ startId: 'start_gone', time: '15:00' })).toMatchObject({
    problems: [{ path: ['startId'] }],
  });
});

it('lists the days asked for, by time', async () => {
  const week = await listCases(db, TODAY, addDays(TODAY, 7));
  expect(week.length).toBeGreaterThan(20);
  expect(week.map(({ startsAt }) => startsAt)).toEqual(week.map(({ startsAt }) => startsAt).sort());
  expect((await listCases(db, addDays(TODAY, 60), addDays(TODAY, 67))).length).toBe(0);
});

it('leaves out what was cancelled, unless it is asked for', async () => {
  const week = (more?: { cancelledToo: boolean }) => listCases(db, TODAY, addDays(TODAY, 7), more);
  const before = await week();
  const [one] = before;
  await db.tx(async (write) => {
    await write.delete(setPromises).where(eq(setPromises.caseId, one?.id ?? ''));
    await write
      .update(cases)
      .set({ cancelledAt: NOW, cancelledBecause: 'The theatre is closed' })
      .where(eq(cases.id, one?.id ?? ''));
  });
  expect((await week()).map(({ id }) => id)).toEqual(before.slice(1).map(({ id }) => id));
  expect((await week({ cancelledToo: true }))[0]).toMatchObject({
    id: one?.id,
    cancelled: { because: 'The theatre is closed' },
  });
});

it('keeps, renames and retires one’s own starts, and says what was withdrawn from under them', async () => {
  const [owner, stranger] = [acting('surgeon'), acting('theatreManager')];
  const [week] = await listCases(db, TODAY, addDays(TODAY, 7));
  const [plan] = await listPlanVersions(db, week?.id ?? '');
  if (!plan) throw new Error('the first case has no plan');
  const keep = (name: unknown, construct: unknown = { ...plan.construct, note: 'for this case' }) =>
    savePlanStart({ db, now: NOW, newId, person: owner, name, construct });
  const kept = await keep('My usual');
  if (!kept.ok) throw new Error('not kept');
  const mine = async () => (await listPlanStarts(db, owner.id)).find(({ id }) => id === kept.value.id);
  expect((await mine())?.construct).toMatchObject({ note: null, limb: null, plates: plan.construct.plates });

  expect(await keep('My usual')).toMatchObject({ problems: [{ path: ['name'], code: 'name-taken' }] });
  expect(await keep('x'.repeat(10_000))).toMatchObject({ problems: [{ path: ['name'] }] });
  expect(await keep('Mrs Thornbury')).toMatchObject({ problems: [{ code: 'looks-like-patient-data' }] });
  expect(await keep('', { region: 'nowhere' })).toMatchObject({
    problems: [
      { path: ['name'] },
      ...Array.from({ length: 7 }, () => ({ path: expect.arrayContaining(['construct']) })),
    ],
  });

  const rename = (person: Person, id: StartId) =>
    renamePlanStart({ db, now: NOW, person, startId: id, name: 'Ankle' });
  expect(await rename(stranger, kept.value.id)).toMatchObject({ problems: [{ code: 'start-unknown' }] });
  expect(await rename(owner, kept.value.id)).toMatchObject({ ok: true });
  expect((await mine())?.name).toBe('Ankle');

  const plate = plan.construct.plates[0]?.plateItemId ?? '';
  await db.tx(async (write) => write.update(items).set({ status: 'withdrawn' }).where(eq(items.id, plate)));
  expect((await mine())?.platesGone).toMatchObject([{ status: 'withdrawn' }]);

  const retire = (person: Person) =>
    retirePlanStart({ db, now: NOW, person, startId: kept.value.id, retire: true });
  expect(await retire(acting('scrubPractitioner'))).toMatchObject({ refusal: { because: 'notPermitted' } });
  expect(await retire(owner)).toMatchObject({ ok: true });
  expect(await mine()).toBeUndefined();
});

it('lets a manager switch remarks off and on again, and nobody else', async () => {
  const set = (role: string, off: ('span-ratio' | 'screw-density')[]) =>
    setPlanRemarks({ db, now: NOW, person: acting(role), off });
  expect(await set('surgeon', ['span-ratio'])).toMatchObject({ ok: false });
  await set('theatreManager', ['screw-density', 'span-ratio']);
  expect(await remarksSwitchedOff(db)).toEqual(['span-ratio', 'screw-density']);
  await set('theatreManager', []);
  expect(await remarksSwitchedOff(db)).toEqual([]);
});

import { eq } from 'drizzle-orm';
import { beforeEach, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { freeSet } from '@/db/operations/theatre/free-set';
import { markDaySeen } from '@/db/operations/theatre/mark-day-seen';
import { moveCase } from '@/db/operations/theatre/move-case';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { newestEntry } from '@/db/queries/ledgerHead';
import { listPeople, type Person } from '@/db/queries/people';
import { entriesSince, lastLook } from '@/db/queries/theatre/dayLook';
import { seenNow } from '@/db/queries/theatre/seenNow';
import { cases, dayLooks, ledger, setPromises } from '@/db/schema';
import { caseId, type NewId, setId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { standings } from '@/lib/theatre/planning/standing';
import { attributed } from '@/lib/theatre/report/attribution';
import { changesSince } from '@/lib/theatre/report/changes';
import type { DayView } from '@/lib/theatre/report/seen';
import { plannedAt } from '../../fixtures/demoReport';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = DEMO_NOW.toISOString();
const LATER = '2026-01-14T07:30:00.000Z';
const DAY = plainDate.parse('2026-01-15');
const round: RoundTimes = { leadMinutes: 60, roundMinutes: () => 345 };
let db: Database;
let manager: Person;
let technician: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  const people = await listPeople(db);
  const one = (role: string) => people.find((person) => person.role === role) as Person;
  [manager, technician] = [one('theatreManager'), one('technician')];
});

const seenAt = async (now: string) => {
  const { planning, answer } = await plannedAt(db, now);
  const before = (await lastLook(db, manager.id, 'morning', DAY))?.seen ?? [];
  return seenNow(
    db,
    DAY,
    before.map(({ id }) => id),
    { standing: standings(planning, answer), now },
  );
};
const mark = async (view: DayView, shownAt: string, now: string, more: object = {}) => {
  const seen = (await seenAt(shownAt)).filter(({ caseDate }) => caseDate === DAY).map((one) => one.seen);
  const ledgerSeq = (await newestEntry(db))?.seq ?? 0;
  return markDaySeen({ db, now, person: manager, view, day: DAY, shownAt, ledgerSeq, seen, ...more });
};
const changesNow = async (now: string) => {
  const look = await lastLook(db, manager.id, 'morning', DAY);
  if (!look) throw new Error('never looked');
  const present = (await seenAt(now)).map(({ seen }) => seen);
  const changes = changesSince(look.seen, present, { toldFrom: 30, day: DAY });
  const things = changes.cases.flatMap((one) => [one.caseId, ...one.sets.map(({ id }) => id)]);
  return attributed(changes, await entriesSince(db, look.ledgerSeq, things));
};
const row = async (id: string) => {
  const [found] = await db.read.select().from(cases).where(eq(cases.id, id));
  if (!found) throw new Error('no such case');
  return found;
};
const asking = async (id: string) => ({
  db,
  now: LATER,
  newId,
  person: manager,
  caseId: caseId.parse(id),
  baseRevision: (await row(id)).revision,
});
const caseWithPromise = async () => {
  const day = await db.read
    .select({ id: cases.id, setId: setPromises.setId })
    .from(cases)
    .innerJoin(setPromises, eq(setPromises.caseId, cases.id))
    .where(eq(cases.caseDate, DAY))
    .orderBy(cases.reference);
  return day as [{ id: string; setId: string }, { id: string; setId: string }, ...typeof day];
};

it('a day marked as seen shows nothing until something changes, and then each change with who and why', async () => {
  expect(await lastLook(db, manager.id, 'morning', DAY)).toBeNull();
  expect(await mark('morning', NOW, NOW)).toMatchObject({ ok: true });
  expect(await changesNow(NOW)).toEqual({ cases: [], orders: [] });
  const [first, second] = await caseWithPromise();
  await cancelCase({ ...(await asking(first.id)), because: 'no recovery bed' });
  await freeSet({ ...(await asking(second.id)), setId: setId.parse(second.setId) });
  const { cases: changed } = await changesNow(LATER);
  const of = (id: string) => changed.filter((one) => one.caseId === id);
  expect(of(first.id)).toMatchObject([
    { what: { kind: 'cancelled' }, by: { action: 'cancel-case', by: manager.name, why: 'no recovery bed' } },
  ]);
  expect(of(second.id)).toContainEqual(
    expect.objectContaining({
      what: expect.objectContaining({ kind: 'promises', gained: [] }),
      by: expect.objectContaining({ action: 'free-set', by: manager.name, at: LATER }),
    }),
  );
});

it('a case moved to another day is found there, and said', async () => {
  await mark('morning', NOW, NOW);
  const [{ id }] = await caseWithPromise();
  const { startsAt, endsAt } = await row(id);
  const later = (at: string) => new Date(Date.parse(at) + 6 * 86_400_000).toISOString();
  const moved = await moveCase({
    ...(await asking(id)),
    theatreId: 'theatre_3',
    startsAt: later(startsAt),
    endsAt: later(endsAt),
    round,
  });
  expect(moved).toMatchObject({ ok: true });
  expect((await changesNow(LATER)).cases.filter((one) => one.caseId === id)).toMatchObject([
    { what: { kind: 'leftDay', to: { startsAt: later(startsAt) } }, by: { action: 'move-case' } },
  ]);
});

it('what is marked is what was shown: what came between showing and marking is news', async () => {
  const seen = (await seenAt(NOW)).map((one) => one.seen);
  const ledgerSeq = (await newestEntry(db))?.seq ?? 0;
  const [{ id }] = await caseWithPromise();
  await cancelCase({ ...(await asking(id)), because: 'no recovery bed' });
  await mark('morning', NOW, LATER, { seen, ledgerSeq });
  const changed = (await changesNow(LATER)).cases.filter((one) => one.caseId === id);
  expect(changed).toMatchObject([{ what: { kind: 'cancelled' }, by: { action: 'cancel-case' } }]);
});

it('a page left open takes nothing back, and the future is not seen yet', async () => {
  await mark('morning', LATER, LATER);
  expect(await mark('morning', NOW, LATER, { seen: [] })).toEqual({ ok: true, value: { shownAt: LATER } });
  const look = await lastLook(db, manager.id, 'morning', DAY);
  expect(look?.shownAt).toBe(LATER);
  expect(look?.seen.length).toBeGreaterThan(0);
  expect(await mark('morning', LATER, NOW)).toMatchObject({ refusal: { because: 'frozen' } });
  const head = (await newestEntry(db))?.seq ?? 0;
  expect(await mark('morning', LATER, LATER, { ledgerSeq: head + 1 })).toMatchObject({
    refusal: { because: 'frozen' },
  });
  await expect(
    db.tx((write) => write.update(dayLooks).set({ shownAt: NOW, markedAt: LATER })),
  ).rejects.toThrow(/later look/);
});

it('looks are a person’s own; a view not looked at yet goes by the newest look at that day', async () => {
  await mark('dayBefore', NOW, NOW);
  expect(await lastLook(db, manager.id, 'morning', DAY)).toMatchObject({ view: 'dayBefore', shownAt: NOW });
  await mark('theatreList', LATER, LATER);
  expect(await lastLook(db, manager.id, 'morning', DAY)).toMatchObject({ view: 'theatreList' });
  expect(await lastLook(db, manager.id, 'dayBefore', DAY)).toMatchObject({ view: 'dayBefore', shownAt: NOW });
  expect(await lastLook(db, technician.id, 'dayBefore', DAY)).toBeNull();
  expect(await lastLook(db, manager.id, 'morning', plainDate.parse('2026-01-16'))).toBeNull();
});

it('the ledger does not speak of looking, and looks at days long over are forgotten', async () => {
  const before = (await db.read.select().from(ledger)).length;
  await mark('morning', NOW, NOW);
  expect((await db.read.select().from(ledger)).length).toBe(before);
  const muchLater = '2026-04-01T06:30:00.000Z';
  await mark('morning', muchLater, muchLater, { day: plainDate.parse('2026-04-01'), seen: [] });
  expect((await db.read.select().from(dayLooks)).map(({ day }) => day)).toEqual(['2026-04-01']);
});

import { and, eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { addSessions } from '@/db/operations/theatre/add-sessions';
import { changeSession } from '@/db/operations/theatre/change-session';
import { changeTheatreLead } from '@/db/operations/theatre/change-theatre-lead';
import { changeUrgency } from '@/db/operations/theatre/change-urgency';
import { removeSession } from '@/db/operations/theatre/remove-session';
import { listPeople, type Person } from '@/db/queries/people';
import { sessionsOn, theatreLeads } from '@/db/queries/theatre/theatreSessions';
import { cases, ledger, notices, setPromises, theatreSessions } from '@/db/schema';
import { caseId, type NewId, personId, theatreId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
const day = (date: string) => plainDate.parse(date);

let db: Database;
let manager: Person;
let surgeon: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  const people = await listPeople(db);
  const one = (role: string) => people.find((person) => person.role === role) as Person;
  [manager, surgeon] = [one('theatreManager'), one('surgeon')];
});

const asked = (more: object = {}) => ({
  theatreId: theatreId.parse('theatre_4'),
  date: day('2026-03-17'),
  from: '13:00',
  until: '17:00',
  surgeonId: null,
  weeks: 1,
  ...more,
});
const add = (more: object = {}, person = manager) =>
  addSessions({ db, now: NOW, newId, person, asked: asked(more) });
const sessionsOf = (theatre: string) =>
  db.read
    .select()
    .from(theatreSessions)
    .where(eq(theatreSessions.theatreId, theatre))
    .orderBy(theatreSessions.startsAt);
const acts = (action: string) => db.read.select().from(ledger).where(eq(ledger.action, action));

describe('entering sessions', () => {
  it('week after week they are at the same times on the wall, over the change of the clocks too', async () => {
    const before = (await sessionsOf('theatre_4')).length;
    const answer = await add({ weeks: 3, surgeonId: personId.parse(surgeon.id) });
    expect(answer).toMatchObject({ ok: true, value: { ids: [{}, {}, {}].map(() => expect.any(String)) } });
    const entered = (await sessionsOf('theatre_4')).slice(before);
    // British Summer Time begins on 29 March 2026 (IANA tz, Europe/London)
    expect(entered.map(({ startsAt, endsAt, surgeonId }) => [startsAt, endsAt, surgeonId])).toEqual([
      ['2026-03-17T13:00:00.000Z', '2026-03-17T17:00:00.000Z', surgeon.id],
      ['2026-03-24T13:00:00.000Z', '2026-03-24T17:00:00.000Z', surgeon.id],
      ['2026-03-31T12:00:00.000Z', '2026-03-31T16:00:00.000Z', surgeon.id],
    ]);
    expect(await acts('add-session')).toHaveLength(3);
  });

  it('is refused as a whole, each week in the way named: taken, over already, skipped by the clocks', async () => {
    await add({ date: day('2026-03-24') });
    const before = (await sessionsOf('theatre_4')).length;
    const answer = await add({ from: '16:00', until: '18:00', weeks: 2 });
    expect(answer).toMatchObject({ ok: false, refusal: { problems: [{ code: 'sessions-overlap' }] } });
    expect(JSON.stringify(answer)).toContain('Tuesday 24 March');
    expect(await add({ date: day('2026-01-13') })).toMatchObject({
      refusal: { problems: [{ code: 'past' }] },
    });
    expect(await add({ date: day('2026-03-29'), from: '01:30', until: '05:00' })).toMatchObject({
      refusal: { problems: [{ code: 'time-skipped', path: ['from'] }] },
    });
    expect(await add({ surgeonId: personId.parse(manager.id) })).toMatchObject({
      refusal: { problems: [{ path: ['surgeonId'] }] },
    });
    expect(await add({}, surgeon)).toMatchObject({ refusal: { because: 'notPermitted' } });
    expect(await sessionsOf('theatre_4')).toHaveLength(before);
  });

  it('one that ends no later than it begins runs into the next day, and lies on both', async () => {
    await add({ from: '21:00', until: '07:00' });
    for (const date of ['2026-03-17', '2026-03-18'])
      expect(
        (await sessionsOn(db, day(date), day(date === '2026-03-17' ? '2026-03-18' : '2026-03-19')))[0],
      ).toMatchObject({
        startsAt: '2026-03-17T21:00:00.000Z',
        endsAt: '2026-03-18T07:00:00.000Z',
      });
  });
});

describe('changing and taking out sessions', () => {
  const first = async () => {
    await add({ weeks: 3 });
    const [one] = (await sessionsOf('theatre_4')).filter(({ sessionDate }) => sessionDate === '2026-03-17');
    if (!one) throw new Error('no session was entered');
    return { db, now: NOW, newId, person: manager, sessionId: one.id, baseRevision: one.revision };
  };

  it('one changes alone; whoever saw it as it was before is refused', async () => {
    const act = await first();
    const to = { date: day('2026-03-17'), from: '09:00', until: '12:30', surgeonId: null };
    expect(await changeSession({ ...act, ...to })).toMatchObject({ ok: true, value: { revision: 2 } });
    expect(await changeSession({ ...act, ...to })).toMatchObject({ refusal: { because: 'conflict' } });
    expect(
      await changeSession({ ...act, ...to, baseRevision: 2, date: day('2026-03-24'), until: '14:00' }),
    ).toMatchObject({ refusal: { problems: [{ code: 'sessions-overlap' }] } });
    const [row] = await db.read.select().from(theatreSessions).where(eq(theatreSessions.id, act.sessionId));
    expect(row).toMatchObject({ startsAt: '2026-03-17T09:00:00.000Z', endsAt: '2026-03-17T12:30:00.000Z' });
    const [entry] = await acts('change-session');
    expect(entry?.detail).toMatchObject({ before: { startsAt: '2026-03-17T13:00:00.000Z' } });
  });

  it('one goes alone, or with those like it in later weeks, whose instants the clocks have moved', async () => {
    const act = await first();
    const before = (await sessionsOf('theatre_4')).length;
    expect(await removeSession({ ...act, andLater: false })).toMatchObject({ value: { removed: 1 } });
    const next = (await sessionsOf('theatre_4')).find(({ sessionDate }) => sessionDate === '2026-03-24');
    if (!next) throw new Error('the next week is gone');
    const later = { ...act, sessionId: next.id, baseRevision: next.revision, andLater: true };
    expect(await removeSession(later)).toMatchObject({ value: { removed: 2 } });
    expect(await sessionsOf('theatre_4')).toHaveLength(before - 3);
    expect(await acts('remove-session')).toHaveLength(3);
  });

  it('what is over stays on record', async () => {
    const [over] = await sessionsOf('theatre_1');
    if (!over) throw new Error('the demo has no session yesterday');
    const act = { db, now: NOW, newId, person: manager, sessionId: over.id, baseRevision: over.revision };
    expect(await removeSession({ ...act, andLater: true })).toMatchObject({ refusal: { because: 'frozen' } });
  });
});

describe('the lead of a theatre', () => {
  const SET = 'set_sfs-02';
  async function promised(theatre: string, time: string, fromAt: string, untilAt: string) {
    made += 1;
    const id = `case_test-${made}`;
    const startsAt = `2026-03-17T${time}:00.000Z`;
    await db.tx(async (write) => {
      await write.insert(cases).values({
        id,
        reference: `LM-26-T${String(made).padStart(3, '0')}`,
        theatreId: theatre,
        caseDate: '2026-03-17',
        startsAt,
        endsAt: new Date(Date.parse(startsAt) + 3_600_000).toISOString(),
        region: 'ankle',
        limb: 'left',
        surgeonId: surgeon.id,
        urgency: 'booked',
        revision: 1,
      });
      await write.insert(setPromises).values({
        id: `promise_test-${made}`,
        setId: SET,
        caseId: id,
        fromAt: `2026-03-17T${fromAt}:00.000Z`,
        untilAt: `2026-03-17T${untilAt}:00.000Z`,
        chosenBy: 'person',
      });
    });
    return id;
  }
  const change = (leadMinutes: number | null, more: object = {}) =>
    changeTheatreLead({
      db,
      now: NOW,
      person: manager,
      theatreId: 'theatre_4',
      baseRevision: 1,
      leadMinutes,
      hospitalLead: 60,
      because: 'A long way from the store',
      ...more,
    });

  it('moves the beginning of what is promised to cases to come there, with its reason on record', async () => {
    const here = await promised('theatre_4', '15:00', '14:00', '20:00');
    expect(await change(90)).toMatchObject({ ok: true, value: { revision: 2 } });
    const [moved] = await db.read.select().from(setPromises).where(eq(setPromises.caseId, here));
    expect(moved).toMatchObject({ fromAt: '2026-03-17T13:30:00.000Z', untilAt: '2026-03-17T20:00:00.000Z' });
    expect((await theatreLeads(db)).find(({ id }) => id === 'theatre_4')).toMatchObject({
      leadMinutes: 90,
      changed: { because: 'A long way from the store', by: manager.name },
    });
    expect(await change(30)).toMatchObject({
      refusal: { because: 'conflict', current: { leadMinutes: 90 } },
    });
    expect(await change(null, { baseRevision: 2 })).toMatchObject({ ok: true });
    const [back] = await db.read.select().from(setPromises).where(eq(setPromises.caseId, here));
    expect(back).toMatchObject({ fromAt: '2026-03-17T14:00:00.000Z' });
  });

  it('is refused where a set could not be back for it, naming both cases, and changes nothing', async () => {
    const earlier = await promised('theatre_3', '08:00', '07:00', '13:45');
    const here = await promised('theatre_4', '15:00', '14:00', '20:00');
    const reference = async (id: string) =>
      (await db.read.select().from(cases).where(eq(cases.id, id)))[0]?.reference ?? '';
    const answer = await change(90);
    expect(answer).toMatchObject({ refusal: { problems: [{ code: 'lead-too-early' }] } });
    for (const id of [earlier, here]) expect(JSON.stringify(answer)).toContain(await reference(id));
    // to the minute: the end of a promise is free again
    expect(await change(75)).toMatchObject({ ok: true });
    expect(await change(75, { baseRevision: 2 })).toMatchObject({ refusal: { because: 'frozen' } });
    expect(await change(30, { baseRevision: 2, because: ' ' })).toMatchObject({
      refusal: { problems: [{ path: ['because'] }] },
    });
    expect(await change(30, { baseRevision: 2, person: surgeon })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
  });
});

describe('the urgency of a case', () => {
  it('changes with its revision and an entry, and the surgeon is told', async () => {
    const [row] = await db.read
      .select()
      .from(cases)
      .where(and(eq(cases.urgency, 'booked'), eq(cases.caseDate, '2026-01-15')));
    if (!row) throw new Error('the demo has no booked case tomorrow');
    const act = {
      db,
      now: NOW,
      newId,
      person: manager,
      caseId: caseId.parse(row.id),
      baseRevision: row.revision,
    };
    expect(await changeUrgency({ ...act, urgency: 'today' })).toMatchObject({
      ok: true,
      value: { revision: row.revision + 1 },
    });
    expect(await changeUrgency({ ...act, urgency: 'now' })).toMatchObject({
      refusal: { because: 'conflict' },
    });
    const again = { ...act, baseRevision: row.revision + 1 };
    expect(await changeUrgency({ ...again, urgency: 'today' })).toMatchObject({
      refusal: { because: 'frozen' },
    });
    expect((await acts('change-urgency')).map(({ detail }) => detail)).toEqual([
      { from: 'booked', to: 'today' },
    ]);
    const told = await db.read.select().from(notices).where(eq(notices.personId, row.surgeonId));
    expect(told).toContainEqual(
      expect.objectContaining({
        kind: 'caseUrgencyChanged',
        detail: { caseReference: row.reference, from: 'booked', to: 'today', by: manager.name },
      }),
    );
  });
});

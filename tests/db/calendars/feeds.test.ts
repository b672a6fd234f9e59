import { eq } from 'drizzle-orm';
import ICAL from 'ical.js';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { appendLedger, findLedgerBreak } from '@/db/ledger';
import { makeFeed } from '@/db/operations/calendars/make-feed';
import { noteRead } from '@/db/operations/calendars/note-read';
import { revokeFeed } from '@/db/operations/calendars/revoke-feed';
import { leavePerson } from '@/db/operations/people/leave-person';
import { changeSetting } from '@/db/operations/settings/change-setting';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { moveCase } from '@/db/operations/theatre/move-case';
import { promiseSet } from '@/db/operations/theatre/promise-set';
import { feedCalendar } from '@/db/queries/calendars/feedCalendar';
import { allFeeds, feedOfToken, ownFeeds } from '@/db/queries/calendars/feeds';
import { findCase } from '@/db/queries/cases';
import { listPeople, type Person } from '@/db/queries/people';
import { calendarFeeds, cases, ledger, people } from '@/db/schema';
import { hashCode, newToken } from '@/db/secrets';
import { writeCalendar } from '@/lib/calendar/write';
import { caseId, type FeedId, type NewId, setId } from '@/lib/identity/ids';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
const LATER = '2026-01-14T09:15:00.000Z';
const CASE = caseId.parse('case_lm-26-m4vq');
const round = { leadMinutes: 60, roundMinutes: () => 345 };

let db: Database;
let everybody: Person[];
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};
const person = (id: string) => everybody.find((one) => one.id === `person_${id}`) as Person;

beforeEach(async () => {
  db = await demoDatabase();
  everybody = await listPeople(db);
});

const make = (who: Person, feed: object = {}) =>
  makeFeed({
    db,
    now: NOW,
    newId,
    newToken,
    person: who,
    feed: { kind: 'theatre', theatreId: null, name: 'Telephone', ...feed },
  });
const revoke = (who: Person, id: FeedId) => revokeFeed({ db, now: LATER, person: who, feedId: id });

async function calendar(feed: object = {}, now = NOW) {
  const text = writeCalendar(
    await feedCalendar(db, { kind: 'theatre', theatreId: null, theatre: null, ...feed }, now),
  );
  const events = new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents('vevent')
    .map((one) => new ICAL.Event(one));
  return { text, events, of: (uid: string) => events.find((event) => event.uid === uid) };
}
const asking = async (who: Person) => {
  const booked = await findCase(db, CASE);
  if (!booked) throw new Error('the demo has no such case');
  return { db, now: LATER, newId, person: who, caseId: CASE, baseRevision: booked.revision };
};

describe('a calendar address', () => {
  it('has a secret of 256 bits that is told once and kept nowhere', async () => {
    const answer = await make(person('wren-adeyemi'));
    if (!answer.ok) throw new Error('not made');
    const { id, token } = answer.value;
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    const [row] = await db.read.select().from(calendarFeeds).where(eq(calendarFeeds.id, id));
    expect(row?.tokenHash).toBe(hashCode(token));
    const entries = await db.read.select().from(ledger);
    expect(entries.at(-1)).toMatchObject({ action: 'make-feed', subjectId: id });
    for (const kept of [entries, await db.read.select().from(calendarFeeds)]) {
      expect(JSON.stringify(kept)).not.toContain(token);
    }
    expect(JSON.stringify(entries)).not.toContain(hashCode(token));
    expect(await findLedgerBreak(db.read)).toBeNull();
    const other = await make(person('wren-adeyemi'));
    expect(other.ok && other.value.token).not.toBe(token);
  });

  it('leads to its calendar by the secret alone, and to nothing by anything near it', async () => {
    const answer = await make(person('wren-adeyemi'), { theatreId: 'theatre_1' });
    if (!answer.ok) throw new Error('not made');
    const { id, token } = answer.value;
    expect(await feedOfToken(db, token)).toMatchObject({
      id,
      kind: 'theatre',
      theatre: 'Theatre 1',
      over: false,
    });
    for (const wrong of ['', token.slice(1), `${token}a`, hashCode(token), token.toUpperCase()])
      expect(await feedOfToken(db, wrong)).toBeNull();
  });

  it('is listed to its owner with its last read, and to an administrator; never its secret', async () => {
    const owner = person('wren-adeyemi');
    const answer = await make(owner);
    if (!answer.ok) throw new Error('not made');
    const { id, token } = answer.value;
    const mine = async () => (await ownFeeds(db, owner.id)).find((feed) => feed.id === id);
    expect(await mine()).toMatchObject({ name: 'Telephone', lastReadAt: null });
    await noteRead({ db, feedId: id, readAt: LATER });
    expect((await mine())?.lastReadAt).toBe(LATER);
    expect((await ownFeeds(db, person('tomas-birkett').id)).map((feed) => feed.id)).not.toContain(id);
    const all = await allFeeds(db);
    expect(all.find((feed) => feed.id === id)?.owner.name).toBe('Wren Adeyemi');
    expect(JSON.stringify(all)).not.toContain(token);
    expect(JSON.stringify(all)).not.toContain(hashCode(token));
    await expect(allFeeds({ ...db, reader: owner })).rejects.toThrow('not permitted');
  });

  it('is revoked for good by its owner or an administrator, and by nobody else', async () => {
    const owner = person('wren-adeyemi');
    const [first, second] = [await make(owner), await make(owner)];
    if (!first.ok || !second.ok) throw new Error('not made');
    expect(await revoke(person('tomas-birkett'), first.value.id)).toMatchObject({
      refusal: { because: 'notFound' },
    });
    expect(await revoke(owner, first.value.id)).toMatchObject({ ok: true });
    expect(await revoke(owner, first.value.id)).toMatchObject({ ok: true });
    expect(await revoke(person('edda-winslow'), second.value.id)).toMatchObject({ ok: true });
    for (const { value } of [first, second])
      expect(await feedOfToken(db, value.token)).toMatchObject({ over: true });
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'revoke-feed'));
    expect(entries.map(({ personId }) => personId)).toEqual(['person_wren-adeyemi', 'person_edda-winslow']);
    await expect(
      db.tx((write) =>
        write
          .update(calendarFeeds)
          .set({ revokedAt: null, revokedBy: null })
          .where(eq(calendarFeeds.id, first.value.id)),
      ),
    ).rejects.toThrow('stays revoked');
    await noteRead({ db, feedId: first.value.id, readAt: LATER });
    const [row] = await db.read.select().from(calendarFeeds).where(eq(calendarFeeds.id, first.value.id));
    expect(row?.lastReadAt).toBeNull();
  });

  it('is over once its owner works here no longer', async () => {
    const owner = person('wren-adeyemi');
    const answer = await make(owner);
    if (!answer.ok) throw new Error('not made');
    await leavePerson({ db, now: LATER, person: person('edda-winslow'), personId: owner.id });
    expect((await db.read.select().from(people).where(eq(people.id, owner.id)))[0]?.leftAt).toBe(LATER);
    expect(await feedOfToken(db, answer.value.token)).toMatchObject({ over: true });
  });

  it('is refused with every reason, and ten at once are enough', async () => {
    const owner = person('wren-adeyemi');
    const refused = await make(owner, { kind: 'loans', theatreId: 'theatre_none', name: 'Mrs Thornbury' });
    expect(
      refused.ok ? [] : refused.refusal.problems.map(({ path, code }) => `${path.join('.')} ${code}`).sort(),
    ).toEqual(['name looks-like-patient-data', 'theatreId of-all', 'theatreId theatre-unknown']);
    expect(await make(owner, { name: ' ', more: 1 })).toMatchObject({ refusal: { because: 'invalid' } });
    const before = (await ownFeeds(db, owner.id)).length;
    for (let n = before; n < 10; n += 1) expect(await make(owner)).toMatchObject({ ok: true });
    expect(await make(owner)).toMatchObject({ refusal: { because: 'frozen' } });
  });
});

describe('the calendar of the theatre list', () => {
  it('has every case of its days, each with its reference, theatre, region and side', async () => {
    const { events, of } = await calendar();
    const booked = await db.read.select().from(cases);
    expect(events).toHaveLength(booked.length);
    const event = of(`${CASE}.theatre`);
    expect(event?.summary).toBe('LM-26-M4VQ: Forearm shaft, left');
    expect(event?.location).toBe('Theatre 1');
    expect(event?.startDate.toJSDate().toISOString()).toBe('2026-01-15T08:30:00.000Z');
    expect(event?.sequence).toBe(0);
    const { events: ofOne } = await calendar({ theatreId: 'theatre_1', theatre: 'Theatre 1' });
    expect(new Set(ofOne.map(({ location }) => location))).toEqual(new Set(['Theatre 1']));
    expect(ofOne.length).toBeLessThan(events.length);
  });

  it('names no person, until the hospital says that surgeons are named', async () => {
    const named = (text: string) =>
      everybody.filter(({ name }) => text.replaceAll(/\r\n /g, '').includes(name));
    for (const kind of ['theatre', 'sterileServices'] as const)
      expect(named((await calendar({ kind })).text)).toEqual([]);
    const changed = await changeSetting({
      db,
      now: NOW,
      person: person('gwen-sallis'),
      key: 'calendars',
      entry: { nameSurgeon: true },
      baseRevision: 0,
      because: 'the coffee room asked for it',
    });
    expect(changed).toMatchObject({ ok: true });
    expect(named((await calendar()).text).map(({ role }) => role)).toContain('surgeon');
    expect(named((await calendar({ kind: 'sterileServices' })).text)).toEqual([]);
  });

  it('keeps a case’s name and counts its changes when it is moved', async () => {
    const before = await calendar();
    const moved = await moveCase({
      ...(await asking(person('gwen-sallis'))),
      theatreId: 'theatre_2',
      startsAt: '2026-01-22T15:30:00.000Z',
      endsAt: '2026-01-22T17:00:00.000Z',
      round,
    });
    expect(moved).toMatchObject({ ok: true });
    const after = await calendar();
    expect(after.of(`${CASE}.theatre`)?.sequence).toBe(1);
    expect(after.of(`${CASE}.theatre`)?.location).toBe('Theatre 2');
    expect(after.of(`${CASE}.theatre`)?.component.getFirstPropertyValue('dtstamp')?.toString()).toBe(
      '2026-01-14T09:15:00Z',
    );
    expect(before.of(`${CASE}.theatre`)?.component.getFirstPropertyValue('dtstamp')?.toString()).toBe(
      `${DEMO_NOW.toISOString().slice(0, 19)}Z`,
    );
    expect(after.events.map(({ uid }) => uid).sort()).toEqual(before.events.map(({ uid }) => uid).sort());
  });

  it('says of a cancelled case that it is cancelled, and keeps it', async () => {
    const cancelled = await cancelCase({
      ...(await asking(person('gwen-sallis'))),
      because: 'the theatre is flooded',
    });
    expect(cancelled).toMatchObject({ ok: true });
    const { of, text } = await calendar();
    expect(of(`${CASE}.theatre`)?.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(of(`${CASE}.theatre`)?.sequence).toBe(1);
    // a reason is free text, and a calendar is read by whoever has the address
    expect(text).not.toContain('flooded');
  });

  it('dates a case that came with others by the entry that names it first', async () => {
    const entry = { personId: null, subjectKind: 'theatreList', subjectId: 'a-file', action: 'load-demo' };
    for (const at of [LATER, '2026-01-14T10:00:00.000Z'])
      await db.tx((write) =>
        appendLedger(write, { ...entry, doneAt: at, enteredAt: at, detail: { booked: [CASE] } }),
      );
    const { of } = await calendar();
    expect(of(`${CASE}.theatre`)?.component.getFirstPropertyValue('dtstamp')?.toString()).toBe(
      '2026-01-14T09:15:00Z',
    );
  });

  it('is the same text while nothing changes, whenever in the day it is asked', async () => {
    expect((await calendar()).text).toBe((await calendar({}, LATER)).text);
  });

  it('is an empty calendar where there is nothing', async () => {
    const { events, text } = await calendar({}, '2030-01-01T00:00:00.000Z');
    expect(events).toHaveLength(0);
    expect(text).toContain('BEGIN:VTIMEZONE');
  });
});

describe('the calendar of sterile services', () => {
  it('says from when the sets of a case must stand in theatre, and which', async () => {
    const need = async () => (await calendar({ kind: 'sterileServices' })).of(`${CASE}.need`);
    const first = await need();
    expect(first?.summary).toBe('SFL-05 for LM-26-M4VQ');
    expect(first?.startDate.toJSDate().toISOString()).toBe('2026-01-15T07:30:00.000Z');
    expect(first?.endDate.toJSDate().toISOString()).toBe('2026-01-15T08:30:00.000Z');
    await promiseSet({ ...(await asking(person('gwen-sallis'))), setId: setId.parse('set_clo-02'), round });
    expect((await need())?.summary).toBe('CLO-02 and SFL-05 for LM-26-M4VQ');
  });

  it('takes a theatre’s own lead', async () => {
    await db.tx(async (write) => write.run("UPDATE theatres SET lead_minutes = 20 WHERE id = 'theatre_3'"));
    const id = 'case_lm-26-a9gd';
    const booked = await findCase(db, id);
    const { of } = await calendar({ kind: 'sterileServices' });
    const minutes =
      (Date.parse(booked?.startsAt ?? '') - (of(`${id}.need`)?.startDate.toJSDate().getTime() ?? 0)) / 60_000;
    expect(minutes).toBe(20);
    expect(of(`${id}.need`)?.summary).toBe('No set promised yet for LM-26-A9GD');
  });
});

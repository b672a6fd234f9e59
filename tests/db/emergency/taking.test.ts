import { and, eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { constructFrom } from '@/db/queries/emergency/constructs';
import { findEmergency, openEmergencies } from '@/db/queries/emergency/record';
import type { Person } from '@/db/queries/people';
import {
  cases,
  emergencies,
  emergencyQuestions,
  ledger,
  notices,
  planStarts,
  plans,
  setPromises,
  sets,
} from '@/db/schema';
import { caseId, startId } from '@/lib/identity/ids';
import { loadDemo } from '@/seed/load';
import { demoDatabase, emptyDatabase } from '../../setup/database';
import { looked, newId, person, take } from './emergencyDesk';

/** The night of the demo: SFL-05 is promised to the morning's LM-26-M4VQ at 08:30, SFL-07 is on its way. */
const NIGHT = '2026-01-15T02:10:00.000Z';
/** Another hour: theatre 3 has the demo's own night case from 02:10. */
const LATER = '2026-01-15T04:00:00.000Z';
const MORNING = 'case_lm-26-m4vq';

let db: Database;
let technician: Person;
let scrub: Person;

beforeEach(async () => {
  db = await demoDatabase();
  [technician, scrub] = await Promise.all([person(db, 'technician'), person(db, 'scrubPractitioner')]);
});

const promises = () => db.read.select().from(setPromises).orderBy(setPromises.id);
const setOf = async (code: string) => {
  const [row] = await db.read.select().from(sets).where(eq(sets.code, code));
  if (!row) throw new Error(`no set ${code}`);
  return row;
};
/** Everything that a taking writes to, to see that a refused one wrote nothing. */
const written = async () => ({
  promises: await promises(),
  cases: (await db.read.select().from(cases)).length,
  emergencies: (await db.read.select().from(emergencies)).length,
  ledger: (await db.read.select().from(ledger)).length,
  notices: (await db.read.select().from(notices)).length,
  plans: (await db.read.select().from(plans)).length,
});

describe('taking the morning’s set', () => {
  it('gives the morning nothing that a person promised to a case it comes too late for: that promise stands', async () => {
    // a demo of the evening: SFL-07 is promised to the night’s case, and back only hours after that begins
    const evening = '2026-01-14T20:20:00.000Z';
    db = emptyDatabase();
    await loadDemo({ db, now: new Date('2026-01-14T20:13:00Z') });
    const standing = (await promises()).find(({ caseId: to }) => to === 'case_lm-26-7k2p');
    const late = await setOf('SFL-07');
    expect(standing).toMatchObject({ setId: late.id, chosenBy: 'person' });
    const asked = await looked(db, evening, ['SFL-05'], { startsAt: '2026-01-15T04:30:00.000Z' });
    const morning = asked.hits.find((hit) => hit.caseId === MORNING);
    expect(morning).toMatchObject({ loses: [{ code: 'SFL-05' }] });
    const instead = morning?.instead.kind === 'sets' ? morning.instead.sets.map(({ code }) => code) : [];
    expect(instead).not.toContain('SFL-07');
    expect(await take(asked, technician)).toMatchObject({ ok: true });
    expect((await promises()).find(({ id }) => id === standing?.id)).toEqual(standing);
  });

  it('says beforehand who loses it, gives that case what the new plan has, and moves nobody else', async () => {
    const before = await promises();
    const asked = await looked(db, LATER, ['SFL-05']);
    const morning = asked.hits.find((hit) => hit.caseId === MORNING);
    expect(morning).toMatchObject({ tentative: false, loses: [{ code: 'SFL-05' }] });
    const taken = await take(asked, technician);
    if (!taken.ok) throw new Error(JSON.stringify(taken.refusal));
    const after = await promises();
    const set = await setOf('SFL-05');
    expect(after.filter(({ setId }) => setId === set.id && setId !== null)).toContainEqual(
      expect.objectContaining({ caseId: taken.value.caseId, chosenBy: 'person' }),
    );
    const has = after.filter((promise) => promise.caseId === MORNING).map(({ setId }) => setId);
    const instead = morning?.instead.kind === 'sets' ? morning.instead.sets.map(({ setId }) => setId) : [];
    expect(has.sort()).toEqual([...instead].sort());
    // whatever is promised to cases that lose nothing stays, to the minute
    const hit = new Set<string>(asked.hits.map((one) => one.caseId));
    const stays = before.filter((promise) => !hit.has(promise.caseId));
    expect(stays.length).toBeGreaterThan(5);
    expect(after).toEqual(expect.arrayContaining(stays));
  });

  it('books the case at once, with the construct as a draft, and leaves plan and count open', async () => {
    const start = startId.parse('start_demo-missing');
    expect(await constructFrom(db, start, 'right')).toBeNull();
    const [first] = (await db.read.select().from(planStarts)).filter(({ name }) =>
      name.startsWith('Forearm shaft, bridging'),
    );
    const found = await constructFrom(db, startId.parse(first?.id), 'right');
    if (!found) throw new Error('the start is gone');
    const asked = await looked(db, LATER, ['SFL-05'], { from: found.from, construct: found.construct });
    const taken = await take(asked, technician);
    if (!taken.ok) throw new Error(JSON.stringify(taken.refusal));
    const id = taken.value.caseId;
    const [booked] = await db.read.select().from(cases).where(eq(cases.id, id));
    expect(booked).toMatchObject({ urgency: 'now', region: 'forearmShaft', limb: 'right', startsAt: LATER });
    const [plan] = await db.read.select().from(plans).where(eq(plans.caseId, id));
    expect(plan).toMatchObject({ status: 'draft', version: 1, body: { limb: 'right' } });
    expect(await openEmergencies(db)).toMatchObject([
      { caseId: id, open: [{ kind: 'plan' }, { kind: 'count' }] },
    ]);
  });

  it('is in the ledger for the emergency and for each case that gives way; surgeons and leads are told', async () => {
    const asked = await looked(db, LATER, ['SFL-05']);
    const taken = await take(asked, technician);
    if (!taken.ok) throw new Error(JSON.stringify(taken.refusal));
    const of = (action: string) => db.read.select().from(ledger).where(eq(ledger.action, action));
    expect(await of('take-for-emergency')).toMatchObject([
      { subjectId: taken.value.caseId, personId: technician.id, detail: { sets: ['SFL-05'] } },
    ]);
    const gaveWay = await of('give-way-to-emergency');
    expect(gaveWay.map(({ subjectId }) => subjectId)).toContain(MORNING);
    expect(gaveWay).toHaveLength(asked.hits.length);
    const told = await db.read.select().from(notices).where(eq(notices.kind, 'setTakenForEmergency'));
    expect(told).toContainEqual(
      expect.objectContaining({
        personId: 'person_ines-halloran',
        detail: expect.objectContaining({ caseReference: 'LM-26-M4VQ', sets: ['SFL-05'] }),
      }),
    );
    const leads = await db.read.select().from(notices).where(eq(notices.kind, 'emergencyTook'));
    // two decontamination leads and two theatre managers in the demo
    expect(leads).toHaveLength(4);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });
});

describe('two people and one set', () => {
  it('of two who press at once one has it, and the other nothing', async () => {
    const asked = await looked(db, LATER, ['SFL-05']);
    const other = await looked(db, LATER, ['SFL-05']);
    const [one, two] = await Promise.all([take(asked, technician), take(other, scrub)]);
    expect([one.ok, two.ok].sort()).toEqual([false, true]);
    const lost = one.ok ? two : one;
    expect(lost).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect((await db.read.select().from(emergencies)).length).toBe(1);
  });

  it('whoever looks again is told who has it: an emergency takes nothing from another', async () => {
    const taken = await take(await looked(db, LATER, ['SFL-05']), technician);
    if (!taken.ok) throw new Error('not taken');
    const before = await written();
    const again = await looked(db, LATER, ['SFL-05'], { startsAt: '2026-01-15T06:30:00.000Z' });
    const said = await take(again, scrub);
    expect(said).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    if (said.ok) throw new Error('taken twice');
    expect(said.refusal.problems[0]?.message).toContain(taken.value.reference);
    expect(await written()).toEqual(before);
  });

  it('no promise slips in between: one made while the morning was planned anew refuses the whole', async () => {
    const asked = await looked(db, LATER, ['SFL-05']);
    const [, , third] = await promises();
    if (!third) throw new Error('no promise');
    await db.tx((write) => write.delete(setPromises).where(eq(setPromises.id, third.id)));
    const before = await written();
    expect(await take(asked, technician)).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect(await written()).toEqual(before);
  });
});

describe('all of it or nothing', () => {
  it('what fails in the middle of planning anew takes everything back', async () => {
    const asked = await looked(db, LATER, ['SFL-05']);
    // the set that is to come instead is one that the emergency itself has
    const [hit] = asked.hits;
    if (!hit) throw new Error('nobody loses');
    const set = await setOf('SFL-05');
    const sets = [{ setId: set.id as never, code: 'SFL-05', there: true, readyAt: LATER }];
    const hits = [{ ...hit, tentative: false, instead: { kind: 'sets' as const, sets, pouches: [] } }];
    const before = await written();
    expect(await take({ ...asked, hits }, technician)).toMatchObject({
      ok: false,
      refusal: { because: 'conflict' },
    });
    expect(await written()).toEqual(before);
  });

  it('a held set is given to nobody, and the refusal says the way out; with it goes what was asked beside it', async () => {
    const before = await written();
    const asked = await looked(db, LATER, ['SFL-02', 'SFL-05']);
    const said = await take(asked, technician);
    expect(said).toMatchObject({ ok: false, refusal: { because: 'frozen', problems: [{ code: 'held' }] } });
    expect(await written()).toEqual(before);
  });

  it('a set on its way is promised and stays where it is', async () => {
    const asked = await looked(db, LATER, ['SFL-07'], { startsAt: '2026-01-15T06:30:00.000Z' });
    const step = (await setOf('SFL-07')).step;
    expect(step).not.toBe('inSterileStore');
    const taken = await take(asked, technician);
    if (!taken.ok) throw new Error(JSON.stringify(taken.refusal));
    expect((await setOf('SFL-07')).step).toBe(step);
    const kept = await findEmergency(db, taken.value.caseId);
    expect(kept?.sets).toMatchObject([{ code: 'SFL-07', gone: null }]);
  });

  it('is for those who may, and for at least one set', async () => {
    const asked = await looked(db, LATER, ['SFL-05']);
    const keeper = await person(db, 'stockKeeper');
    expect(await take(asked, keeper)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    const none = { ...asked, taking: { ...asked.taking, sets: [] } };
    expect(await take(none, technician)).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
  });

  it('a theatre that has a case then is not booked twice', async () => {
    // LM-26-7K2P is in theatre 3 from 02:10
    const asked = await looked(db, NIGHT, ['SFL-05']);
    const before = await written();
    expect(await take(asked, technician)).toMatchObject({
      ok: false,
      refusal: { because: 'invalid', problems: [{ code: 'theatre-taken' }] },
    });
    expect(await written()).toEqual(before);
  });
});

describe('a case that is on the list already', () => {
  it('gets the sets as it stands, once, and what was promised to it before goes back to the others', async () => {
    const [listed] = await db.read.select().from(cases).where(eq(cases.reference, 'LM-26-7K2P'));
    if (!listed) throw new Error('no such case');
    const asked = await looked(db, NIGHT, ['SFL-05']);
    const target = { kind: 'listed' as const, caseId: caseId.parse(listed.id) };
    expect(await take({ ...asked, target }, technician)).toMatchObject({
      ok: true,
      value: { caseId: listed.id, reference: 'LM-26-7K2P' },
    });
    const has = (await promises()).filter((promise) => promise.caseId === listed.id);
    expect(has.map(({ setId }) => setId)).toEqual([(await setOf('SFL-05')).id]);
    // its plan was confirmed before: the count alone stays open
    const kept = await findEmergency(db, target.caseId);
    expect(kept?.questions.map(({ kind }) => kind)).toEqual(['count']);
    const again = await looked(db, NIGHT, ['SFL-01']);
    expect(await take({ ...again, target }, technician)).toMatchObject({
      ok: false,
      refusal: { because: 'frozen' },
    });
  });
});

describe('the database itself', () => {
  it('lets nobody promise the taken set over that time, and keeps what was taken as it was', async () => {
    const taken = await take(await looked(db, LATER, ['SFL-05']), technician);
    if (!taken.ok) throw new Error('not taken');
    const set = await setOf('SFL-05');
    const [held] = await db.read
      .select()
      .from(setPromises)
      .where(and(eq(setPromises.setId, set.id), eq(setPromises.caseId, taken.value.caseId)));
    if (!held) throw new Error('not promised');
    const insert = db.tx((write) =>
      write.insert(setPromises).values({ ...held, id: newId('promise'), caseId: MORNING }),
    );
    await expect(insert).rejects.toThrow();
    const change = db.tx((write) =>
      write.update(emergencies).set({ happenedAt: NIGHT }).where(eq(emergencies.caseId, taken.value.caseId)),
    );
    await expect(change).rejects.toThrow();
    await expect(db.tx((write) => write.delete(emergencyQuestions))).rejects.toThrow();
    await expect(db.tx((write) => write.delete(emergencies))).rejects.toThrow();
  });
});

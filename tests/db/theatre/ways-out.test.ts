import { and, eq } from 'drizzle-orm';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { takeWayOut, waysOut } from '@/app/_server/ways-out';
import type { Database } from '@/db/client';
import { promiseSet } from '@/db/operations/theatre/promise-set';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { listPeople, type Person } from '@/db/queries/people';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';
import { casePicks, cases, ledger, notices, plans, setPromises, sets, wantedTurns } from '@/db/schema';
import { caseId, type NewId, setId } from '@/lib/identity/ids';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

// the marker of server files means nothing outside of the build
vi.mock('server-only', () => ({}));

const NOW = DEMO_NOW.toISOString();
const DAY = '2026-01-20';
const HOUR = 3_600_000;
const round: RoundTimes = { leadMinutes: 60, roundMinutes: () => 345 };
/** A case of the demo with a confirmed plan that a set of one kind serves: there are two such sets in service. */
const LIKE = 'case_lm-26-d3xe';

let db: Database;
let manager: Person;
let scrub: Person;
let surgeon: Person;
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
  [manager, scrub, surgeon] = [one('theatreManager'), one('scrubPractitioner'), one('surgeon')];
  // what the night is offered while nobody has chosen a set for it
  await db.tx((write) => write.delete(setPromises).where(eq(setPromises.caseId, 'case_lm-26-7k2p')));
});
afterEach(() => {
  vi.useRealTimers();
});

/** A case planned like the one of the demo, on a day the demo leaves alone. */
async function caseAt(time: string, hours: number, theatreId: string, urgency = 'booked', likeId = LIKE) {
  made += 1;
  const id = caseId.parse(`case_test-${made}`);
  const startsAt = `${DAY}T${time}:00.000Z`;
  const [like] = await db.read.select().from(cases).where(eq(cases.id, likeId));
  const [plan] = await db.read
    .select()
    .from(plans)
    .where(and(eq(plans.caseId, likeId), eq(plans.status, 'confirmed')));
  if (!like || !plan) throw new Error('the demo has no such case');
  await db.tx(async (write) => {
    await write.insert(cases).values({
      ...like,
      id,
      reference: `LM-26-T${String(made).padStart(3, '0')}`,
      theatreId,
      caseDate: DAY,
      startsAt,
      endsAt: new Date(Date.parse(startsAt) + hours * HOUR).toISOString(),
      urgency,
      revision: 1,
    });
    await write.insert(plans).values({ ...plan, id: `plan_test-${made}`, caseId: id });
  });
  return id;
}

const row = async (id: string) => {
  const [found] = await db.read.select().from(cases).where(eq(cases.id, id));
  if (!found) throw new Error('no such case');
  return found;
};
const promisedTo = async (id: string) => {
  const rows = await db.read
    .select({ code: sets.code, chosenBy: setPromises.chosenBy })
    .from(setPromises)
    .innerJoin(sets, eq(sets.id, setPromises.setId))
    .where(eq(setPromises.caseId, id))
    .orderBy(sets.code);
  return rows.map(({ code, chosenBy }) => `${code} ${chosenBy}`);
};
async function give(id: string, set: string) {
  const { revision } = await row(id);
  const asked = {
    db,
    now: NOW,
    newId,
    person: manager,
    caseId: caseId.parse(id),
    baseRevision: revision,
    round,
  };
  const promised = await promiseSet({ ...asked, setId: setId.parse(set) });
  if (!promised.ok) throw new Error(promised.refusal.problems[0]?.message);
}
async function offers(id: string) {
  const found = await waysOut(db, caseId.parse(id), 'theatreManager');
  if (!found) throw new Error('not planned for');
  return found;
}
async function offer(id: string, title: RegExp) {
  const { revision, waysOut: found } = await offers(id);
  const way = found.find((one) => title.test(one.title));
  if (!way) throw new Error(`only ${found.map((one) => one.title).join(' | ')}`);
  return { way, revision };
}
function take(id: string, key: string, baseRevision: number, person = manager) {
  return takeWayOut(db, { db, person, newId, now: () => NOW, caseId: caseId.parse(id), baseRevision, key });
}

/** Two cases in the morning with a set each, and a third that needs one before either is back. */
async function crowded(urgency = 'soon') {
  const first = await caseAt('09:00', 1.5, 'theatre_3');
  const beside = await caseAt('09:00', 1.5, 'theatre_4');
  const third = await caseAt('13:00', 1, 'theatre_3', urgency);
  await give(first, 'set_clo-01');
  await give(beside, 'set_clo-02');
  return { first, beside, third };
}

describe('other sets', () => {
  it('take no set that lies with the kit of another case', async () => {
    const [wanting, holding] = ['case_lm-26-7k2p', 'case_lm-26-m4vq'];
    const { way, revision } = await offer(wanting, /^Take SFL-05/);
    await db.tx((write) =>
      write.insert(casePicks).values({
        id: 'pick_test-beside',
        caseId: holding,
        setId: 'set_sfl-05',
        quantity: 1,
        how: 'touch',
        pickedBy: scrub.id,
        doneAt: NOW,
        enteredAt: NOW,
      }),
    );
    expect(await take(wanting, way.key, revision)).toMatchObject({ ok: false });
    expect(await promisedTo(holding)).toEqual(['SFL-05 person']);
    expect(await promisedTo(wanting)).toEqual([]);
  });

  it('are promised by a person’s choice, and other cases’ promises move with them in the same act', async () => {
    const [wanting, holding] = ['case_lm-26-7k2p', 'case_lm-26-m4vq'];
    expect(await promisedTo(holding)).toEqual(['SFL-05 person']);
    const { way, revision } = await offer(wanting, /^Take SFL-05/);
    expect(way.costs).toEqual(['LM-26-M4VQ has SFL-07 instead of SFL-05.']);
    const outcome = await take(wanting, way.key, revision);
    expect(outcome).toMatchObject({ ok: true, value: { planned: null } });
    expect(await promisedTo(wanting)).toEqual(['SFL-05 person']);
    expect(await promisedTo(holding)).toEqual(['SFL-07 person']);
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'apply-repair'));
    expect(entries.map(({ subjectId, detail }) => [subjectId, detail])).toEqual([
      [wanting, { kind: 'otherSets', forCase: wanting, given: ['SFL-05'], taken: [] }],
      [holding, { kind: 'otherSets', forCase: wanting, given: ['SFL-07'], taken: ['SFL-05'] }],
    ]);
    const told = await db.read.select().from(notices).where(eq(notices.kind, 'caseSetsChanged'));
    expect(told.map(({ personId }) => personId)).toContain((await row(holding)).surgeonId);
    // it is done: the same way out is none any more
    expect((await offers(wanting)).waysOut.map(({ title }) => title)).not.toContain('Take SFL-05');
  });

  it('come cheapest first, and only those that are there sooner than what the plan has', async () => {
    const { waysOut: found } = await offers('case_lm-26-7k2p');
    expect(found.map(({ title, costs }) => [title, costs.length])).toEqual([
      ['Take SFL-01 with 1 × Torque limiter 1.5 N·m', 0],
      ['Take SFL-07', 0],
      ['Take SFL-05', 1],
    ]);
  });

  it('are refused as soon as the plan is another one, with nothing done', async () => {
    const wanting = 'case_lm-26-7k2p';
    const { way, revision } = await offer(wanting, /^Take SFL-05/);
    await db.tx((write) =>
      write
        .update(sets)
        .set({ step: 'held', heldBecause: 'recall', revision: 99 })
        .where(eq(sets.id, 'set_sfl-05')),
    );
    expect(await take(wanting, way.key, revision)).toMatchObject({
      ok: false,
      refusal: { because: 'conflict' },
    });
    expect(await promisedTo(wanting)).toEqual([]);
    expect(await take(wanting, way.key, revision + 1)).toMatchObject({ ok: false });
    // the newest is another list
    const { waysOut: newest } = await offers(wanting);
    expect(newest.map(({ key }) => key)).not.toContain(way.key);
  });

  it('go to one of two people who take them at once', async () => {
    const [one, other] = ['case_lm-26-7k2p', 'case_lm-26-7k2p'];
    const { way, revision } = await offer(one, /^Take SFL-05/);
    const { way: second } = await offer(other, /^Take SFL-01/);
    const answers = await Promise.all([
      take(one, way.key, revision, manager),
      take(other, second.key, revision, scrub),
    ]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ refusal: { because: 'conflict' } });
    expect(await promisedTo(one)).toHaveLength(1);
  });

  it('are for those to take who may promise sets', async () => {
    const { way, revision } = await offer('case_lm-26-7k2p', /^Take SFL-05/);
    expect(await take('case_lm-26-7k2p', way.key, revision, surgeon)).toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    const seen = await waysOut(db, caseId.parse('case_lm-26-7k2p'), 'surgeon');
    expect(seen?.waysOut.map(({ confirm }) => confirm)).toEqual([null, null, null]);
  });
});

describe('another time', () => {
  it('changes places with a neighbour that needs another kind of set, and both keep what they have', async () => {
    // both sets are in theatre by night, and back in the morning
    await give(await caseAt('01:00', 1, 'theatre_1'), 'set_clo-01');
    await give(await caseAt('01:00', 1, 'theatre_4'), 'set_clo-02');
    const wanting = await caseAt('09:00', 1, 'theatre_3');
    const neighbour = await caseAt('14:00', 2, 'theatre_3', 'booked', 'case_lm-26-a9gd');
    await give(neighbour, 'set_dfb-01');
    const [before, other] = [await row(wanting), await row(neighbour)];
    const { way, revision } = await offer(wanting, /^Change places with/);
    expect(way.title).toBe(`Change places with ${other.reference}`);
    expect(way.costs).toEqual([`${other.reference} begins 20 Jan 09:00 instead of 14:00.`]);
    expect(await take(wanting, way.key, revision)).toMatchObject({ ok: true });
    expect(await row(neighbour)).toMatchObject({
      startsAt: before.startsAt,
      endsAt: `${DAY}T11:00:00.000Z`,
    });
    // what lay between the two lies there still
    expect(await row(wanting)).toMatchObject({ startsAt: `${DAY}T15:00:00.000Z`, endsAt: other.endsAt });
    expect(await promisedTo(wanting)).toHaveLength(1);
    expect(await promisedTo(neighbour)).toEqual(['DFB-01 person']);
    const moved = await db.read.select().from(ledger).where(eq(ledger.action, 'move-case'));
    expect(moved.map(({ subjectId }) => subjectId).sort()).toEqual([neighbour, wanting].sort());
  });

  it('begins the case as soon as a set is back, on a round minute, with that set', async () => {
    const { third } = await crowded('booked');
    const { way, revision } = await offer(third, /^Begin .* later$/);
    expect(way.costs).toEqual([]);
    const before = await row(third);
    expect(await take(third, way.key, revision)).toMatchObject({ ok: true });
    const after = await row(third);
    expect(after.startsAt > before.startsAt).toBe(true);
    expect(new Date(after.startsAt).getUTCMinutes() % 5).toBe(0);
    expect(Date.parse(after.endsAt) - Date.parse(after.startsAt)).toBe(HOUR);
    expect(await promisedTo(third)).toHaveLength(1);
  });

  it('is nothing to press where its theatre is taken then', async () => {
    const { third } = await crowded('booked');
    await caseAt('15:00', 8, 'theatre_3');
    const { way } = await offer(third, /^Begin .* later$/);
    expect(way.confirm).toBeNull();
    expect(way.does.join(' ')).toMatch(/must be moved first/);
  });
});

describe('a quicker turn', () => {
  it('puts the set first in what is done next, with why, and tells the leads', async () => {
    const { first, third } = await crowded('booked');
    const { way, revision } = await offer(third, /^Ask for CLO-0\d .* sooner$/);
    const promises = await db.read.select().from(setPromises);
    expect(await take(third, way.key, revision)).toMatchObject({ ok: true, value: { planned: null } });
    // asked for once, it is no way out any more
    expect((await offers(third)).waysOut.map(({ title }) => title)).not.toContain(way.title);
    // it promises nothing
    expect(await db.read.select().from(setPromises)).toEqual(promises);
    const [wanted] = await db.read.select().from(wantedTurns);
    expect(wanted).toMatchObject({ forCaseId: third, askedBy: manager.id });
    expect(wanted?.wantedBy).toBe(`${DAY}T12:00:00.000Z`);
    const told = await db.read.select().from(notices).where(eq(notices.kind, 'turnWanted'));
    const leads = (await listPeople(db)).filter(({ role }) => role === 'decontaminationLead');
    expect(told.map(({ personId }) => personId).sort()).toEqual(leads.map(({ id }) => id).sort());
    // the turn that is meant begins with the case it comes back from
    const set = wanted?.setId ?? '';
    const at = (time: string) => `${DAY}T${time}:00.000Z`;
    const firstOf = async (now: string) =>
      (await loadWorkQueue(db, now)).lines.find(({ line }) => line.setId === set)?.line;
    expect((await firstOf(at('08:30')))?.wanted ?? null).toBeNull();
    const goes = (to: Partial<typeof sets.$inferInsert>) =>
      db.tx((write) => write.update(sets).set(to).where(eq(sets.id, set)));
    await goes({ step: 'inTheatre', stepSince: at('08:30'), caseId: wanted?.afterCaseId ?? null });
    await goes({ step: 'comingBack', stepSince: at('10:40'), caseId: null, packId: null });
    const queue = await loadWorkQueue(db, at('10:45'));
    expect(queue.lines[0]?.line).toMatchObject({
      setId: set,
      needBy: at('12:00'),
      wanted: { forCase: { id: third }, askedBy: manager.name },
    });
    expect(first).not.toBe(third);
    // with the case, the hurry ends
    expect((await firstOf(at('13:30')))?.wanted ?? null).toBeNull();
  });
});

describe('a set from elsewhere', () => {
  it('is asked for by a loan request filled in, and by no press here', async () => {
    const { waysOut: found } = await offers('case_lm-26-8pze');
    expect(
      found.map(({ title, confirm, requests }) => [title, confirm, requests.map(({ href }) => href)]),
    ).toEqual([
      [
        'Borrow a set: Mini fragment locking 2.0, titanium',
        null,
        ['/loans/new?case=case_lm-26-8pze&configuration=configuration_mft'],
      ],
      [
        'Ask for a loan set: Mini fragment locking 2.0, titanium',
        null,
        ['/loans/new?case=case_lm-26-8pze&configuration=configuration_mft'],
      ],
    ]);
  });
});

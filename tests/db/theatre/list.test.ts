import { and, eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { freeSet } from '@/db/operations/theatre/free-set';
import { moveCase } from '@/db/operations/theatre/move-case';
import { promiseSet } from '@/db/operations/theatre/promise-set';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { putCaseBack } from '@/db/operations/theatre/put-case-back';
import { reorderList } from '@/db/operations/theatre/reorder-list';
import { listPeople, type Person } from '@/db/queries/people';
import { cases, ledger, notices, setPromises, sets } from '@/db/schema';
import { caseId, type NewId, setId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
const DAY = '2026-01-20';
const HOUR = 3_600_000;
const round: RoundTimes = { leadMinutes: 60, roundMinutes: () => 345 };

let db: Database;
let manager: Person;
let surgeon: Person;
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
  [manager, surgeon, technician] = [one('theatreManager'), one('surgeon'), one('technician')];
});

/** A case of this test's own on a day the demo leaves alone. */
async function caseAt(time: string, hours: number, theatreId = 'theatre_3', day = DAY) {
  made += 1;
  const reference = `LM-26-T${String(made).padStart(3, '0')}`;
  const startsAt = `${day}T${time}:00.000Z`;
  const id = caseId.parse(`case_test-${made}`);
  await db.tx((write) =>
    write.insert(cases).values({
      id,
      reference,
      theatreId,
      caseDate: day,
      startsAt,
      endsAt: new Date(Date.parse(startsAt) + hours * HOUR).toISOString(),
      region: 'ankle',
      limb: 'left',
      surgeonId: surgeon.id,
      urgency: 'booked',
      revision: 1,
    }),
  );
  return id;
}

const row = async (id: string) => {
  const [found] = await db.read.select().from(cases).where(eq(cases.id, id));
  if (!found) throw new Error('no such case');
  return found;
};
const asking = async (id: string, person = manager) => ({
  db,
  now: NOW,
  newId,
  person,
  caseId: caseId.parse(id),
  baseRevision: (await row(id)).revision,
});
const SET = setId.parse('set_sfs-02');
const promise = async (id: string, set = SET) => promiseSet({ ...(await asking(id)), setId: set, round });
const promisesOf = (id: string) => db.read.select().from(setPromises).where(eq(setPromises.caseId, id));
const move = async (id: string, to: object, person = manager) => {
  const { theatreId, startsAt, endsAt } = await row(id);
  return moveCase({ ...(await asking(id, person)), theatreId, startsAt, endsAt, round, ...to });
};

describe('promising a set', () => {
  it('speaks for it from the lead until it is back in the store, and for nobody else', async () => {
    const [first, second] = [await caseAt('09:00', 2), await caseAt('14:00', 2, 'theatre_2')];
    expect(await promise(first)).toMatchObject({ ok: true });
    expect((await promisesOf(first))[0]).toMatchObject({
      fromAt: `${DAY}T08:00:00.000Z`,
      untilAt: `${DAY}T16:45:00.000Z`,
      chosenBy: 'person',
      promisedBy: manager.id,
    });
    const refusal = await promise(second);
    expect(refusal).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect(JSON.stringify(refusal)).toContain((await row(first)).reference);
    await freeSet({ ...(await asking(first)), setId: SET });
    expect(await promise(second)).toMatchObject({ ok: true });
  });

  it('of many who ask at once one has it', async () => {
    const ids = await Promise.all(
      Array.from({ length: 12 }, (_, at) => caseAt('09:00', 2, `theatre_${(at % 3) + 1}`)),
    );
    const answers = await Promise.all(ids.map((id) => promise(id)));
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await db.read.select().from(ledger).where(eq(ledger.action, 'promise-set'))).toHaveLength(1);
  });

  it('is for those who may, for cases to come, and for sets in service', async () => {
    const id = await caseAt('09:00', 2);
    expect(await promiseSet({ ...(await asking(id, technician)), setId: SET, round })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    await db.tx((write) => write.update(sets).set({ withdrawnAt: NOW }).where(eq(sets.id, SET)));
    expect(await promise(id)).toMatchObject({ refusal: { because: 'frozen' } });
    expect(await promise(id, setId.parse('set_no-such'))).toMatchObject({ refusal: { because: 'notFound' } });
    const old = await caseAt('09:00', 2, 'theatre_3', '2026-01-06');
    expect(await promise(old)).toMatchObject({ refusal: { because: 'frozen' } });
  });
});

describe('moving a case', () => {
  it('takes its sets along where they can be had, and says which can’t', async () => {
    const [first, second] = [await caseAt('09:00', 1), await caseAt('18:00', 1)];
    await promise(first);
    await promise(first, setId.parse('set_sfl-02'));
    await promise(second);
    const moved = await move(first, { startsAt: `${DAY}T16:00:00.000Z`, endsAt: `${DAY}T17:00:00.000Z` });
    expect(moved).toMatchObject({ ok: true, value: { revision: 2, lost: [{ setCode: 'SFS-02' }] } });
    expect(await promisesOf(first)).toMatchObject([
      { setId: 'set_sfl-02', fromAt: `${DAY}T15:00:00.000Z`, untilAt: `${DAY}T22:45:00.000Z` },
    ]);
    expect(await promisesOf(second)).toHaveLength(1);
    const told = await db.read.select().from(notices).where(eq(notices.personId, surgeon.id));
    expect(told).toMatchObject([{ kind: 'caseMoved', detail: { lostSets: ['SFS-02'] } }]);
  });

  it('changes its date with the day at the hospital, across the night', async () => {
    const id = await caseAt('22:00', 1, 'theatre_3', '2026-06-10');
    // in summer time 23:30 UTC is half past midnight
    await move(id, { startsAt: '2026-06-10T23:30:00Z', endsAt: '2026-06-11T00:30:00Z' });
    expect(await row(id)).toMatchObject({ caseDate: '2026-06-11', startsAt: '2026-06-10T23:30:00.000Z' });
  });

  it.each([
    [
      'into a theatre that is taken',
      { startsAt: `${DAY}T11:30:00.000Z`, endsAt: `${DAY}T12:30:00.000Z` },
      'invalid',
    ],
    ['to a theatre that is not there', { theatreId: 'theatre_none' }, 'invalid'],
  ])('is refused %s', async (_, to, because) => {
    const id = await caseAt('09:00', 1);
    await caseAt('12:00', 1);
    expect(await move(id, to)).toMatchObject({ ok: false, refusal: { because } });
    expect(await row(id)).toMatchObject({ revision: 1 });
  });

  it('once its set is in theatre only its end moves', async () => {
    const id = await caseAt('09:00', 1, 'theatre_3', '2026-01-14');
    await db.tx((write) => write.update(sets).set({ step: 'inTheatre', caseId: id }).where(eq(sets.id, SET)));
    const at = (time: string) => `2026-01-14T${time}:00.000Z`;
    expect(await move(id, { startsAt: at('10:00'), endsAt: at('11:00') })).toMatchObject({ ok: false });
    expect(await move(id, { endsAt: at('11:30') })).toMatchObject({ ok: true });
  });

  it('of two who move it at once the second is told', async () => {
    const id = await caseAt('09:00', 1);
    const at = (hour: number) => `${DAY}T${hour}:00:00.000Z`;
    const answers = await Promise.all([
      move(id, { startsAt: at(10), endsAt: at(11) }),
      move(id, { startsAt: at(14), endsAt: at(15) }),
    ]);
    expect(answers).toMatchObject([
      { ok: true },
      { refusal: { because: 'conflict', current: { startsAt: at(10) } } },
    ]);
  });
});

describe('the order of a day', () => {
  it('changes as a whole: first start, lengths and gaps stay', async () => {
    const ids = [await caseAt('08:00', 1), await caseAt('09:30', 2), await caseAt('12:00', 1)];
    const order = await Promise.all(
      [ids[2], ids[0], ids[1]].map(async (id) => ({ caseId: id as string, revision: 1 })),
    );
    const asked = {
      db,
      now: NOW,
      newId,
      person: manager,
      theatreId: 'theatre_3',
      date: plainDate.parse(DAY),
      round,
    };
    expect(await reorderList({ ...asked, order: order.slice(1) })).toMatchObject({
      refusal: { because: 'conflict' },
    });
    expect(await reorderList({ ...asked, order })).toMatchObject({ ok: true, value: { moved: 3 } });
    expect(
      await Promise.all(order.map(async ({ caseId: id }) => (await row(id)).startsAt.slice(11, 16))),
    ).toEqual(['08:00', '09:30', '11:00']);
    expect(await reorderList({ ...asked, order })).toMatchObject({ refusal: { because: 'conflict' } });
  });
});

describe('cancelling a case', () => {
  it('frees its sets, keeps the reason, and can be taken back while the theatre is free', async () => {
    const id = await caseAt('09:00', 1);
    await promise(id);
    expect(await cancelCase({ ...(await asking(id)), because: ' ' })).toMatchObject({
      refusal: { because: 'invalid', problems: [{ path: ['because'] }] },
    });
    expect(await cancelCase({ ...(await asking(id)), because: 'Fever' })).toMatchObject({
      ok: true,
      value: { freed: ['SFS-02'] },
    });
    expect(await promisesOf(id)).toEqual([]);
    expect(await row(id)).toMatchObject({ cancelledAt: NOW, cancelledBecause: 'Fever' });
    expect(await move(id, { endsAt: `${DAY}T10:30:00.000Z` })).toMatchObject({
      refusal: { because: 'frozen' },
    });
    const other = await caseAt('09:30', 1);
    expect(await putCaseBack(await asking(id))).toMatchObject({ refusal: { because: 'invalid' } });
    await cancelCase({ ...(await asking(other)), because: 'Not needed' });
    expect(await putCaseBack(await asking(id))).toMatchObject({ ok: true });
    const acts = await db.read
      .select({ action: ledger.action })
      .from(ledger)
      .where(and(eq(ledger.subjectKind, 'case'), eq(ledger.subjectId, id)))
      .orderBy(ledger.seq);
    expect(acts.map(({ action }) => action)).toEqual(['promise-set', 'cancel-case', 'put-case-back']);
  });
});

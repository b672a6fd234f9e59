import { desc, eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { beginPlan } from '@/db/operations/begin-plan';
import { beginPlanVersion } from '@/db/operations/begin-plan-version';
import { confirmPlan } from '@/db/operations/confirm-plan';
import { discardPlanDraft } from '@/db/operations/discard-plan-draft';
import { savePlanDraft } from '@/db/operations/save-plan-draft';
import { findCase, listPlanVersions } from '@/db/queries/cases';
import { listPeople, type Person } from '@/db/queries/people';
import { listPlates } from '@/db/queries/planner';
import { items, ledger, plans } from '@/db/schema';
import { caseId, type NewId, planId } from '@/lib/identity/ids';
import { emptyConstruct } from '@/lib/plans/edit';
import type { Construct } from '@/lib/plans/plan';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
/** A booked case without a plan, and one whose second version is in draft. */
const UNPLANNED = caseId.parse('case_lm-26-z5wm');
const IN_DRAFT = caseId.parse('case_lm-26-l4qf');

let db: Database;
let surgeon: Person;
let other: Person;
let technician: Person;
let ids = 0;
const newId: NewId = (prefix) => {
  ids += 1;
  return `${prefix}_test-${ids}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  const people = await listPeople(db);
  const of = (role: string) => people.filter((person) => person.role === role);
  [surgeon, other] = of('surgeon') as [Person, Person];
  [technician] = of('technician') as [Person];
});

async function begun(construct?: Construct) {
  const booked = await findCase(db, UNPLANNED);
  if (!booked) throw new Error('the demo has no such case');
  const outcome = await beginPlan({
    db,
    now: NOW,
    newId,
    person: surgeon,
    caseId: UNPLANNED,
    construct: construct ?? emptyConstruct(booked.region, booked.limb),
    notPatientData: false,
  });
  if (!outcome.ok) throw new Error(outcome.refusal.problems[0]?.message);
  return outcome.value;
}

const save = (plan: { id: string; revision: number }, construct: unknown, more: object = {}) =>
  savePlanDraft({
    db,
    now: NOW,
    person: surgeon,
    planId: planId.parse(plan.id),
    revision: plan.revision,
    construct,
    notPatientData: false,
    ...more,
  });

const lastEntry = async () => (await db.read.select().from(ledger).orderBy(desc(ledger.seq)).limit(1))[0];

describe('a draft', () => {
  it('is begun once: a second beginning is refused and shows the first', async () => {
    const first = await begun();
    const second = await beginPlan({
      db,
      now: NOW,
      newId,
      person: other,
      caseId: UNPLANNED,
      construct: first.construct,
      notPatientData: false,
    });
    expect(second).toMatchObject({ ok: false, refusal: { because: 'conflict', current: { id: first.id } } });
  });

  it('is saved over the revision it was begun from, with a ledger entry that follows', async () => {
    const plan = await begun();
    const saved = await save(plan, { ...plan.construct, bone: 'poor' });
    expect(saved).toEqual({ ok: true, value: { revision: 2 } });
    expect(await lastEntry()).toMatchObject({
      action: 'save-plan-draft',
      subjectId: plan.id,
      detail: { changed: ['bone'], revision: 2 },
    });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('refuses a conflicting save with both values, and keeps what stands', async () => {
    const plan = await begun();
    await save(plan, { ...plan.construct, bone: 'poor' }, { person: other });
    const late = await save(plan, { ...plan.construct, bone: 'normal' });
    expect(late).toMatchObject({
      ok: false,
      refusal: {
        because: 'conflict',
        current: { revision: 2, writtenBy: other.id, construct: { bone: 'poor' } },
      },
    });
    const [stands] = await listPlanVersions(db, UNPLANNED);
    expect(stands?.construct.bone).toBe('poor');
  });

  it('takes the same save twice as one', async () => {
    const plan = await begun();
    const construct = { ...plan.construct, bone: 'poor' };
    await save(plan, construct);
    expect(await save(plan, construct)).toEqual({ ok: true, value: { revision: 2 } });
  });

  it('refuses bad input with every path, and saves nothing', async () => {
    const plan = await begun();
    const outcome = await save(plan, {
      ...plan.construct,
      bone: 'soft',
      note: 'x'.repeat(10_000),
      freeScrews: [
        {
          key: 'L1',
          screwFamily: 'a',
          cortices: 3,
          length: { kind: 'exact', mm: -4 },
          acceptLongerMm: 0,
          washerItemId: null,
        },
      ],
    });
    expect(outcome.ok ? [] : outcome.refusal.problems.map(({ path }) => path.join('/')).sort()).toEqual([
      'bone',
      'freeScrews/0/cortices',
      'freeScrews/0/length/mm',
      'note',
    ]);
    expect((await listPlanVersions(db, UNPLANNED))[0]?.revision).toBe(1);
  });

  it('refuses a note that looks like a patient’s data until the writer says it is not', async () => {
    const plan = await begun();
    const construct = { ...plan.construct, note: 'NHS 943 476 5919' };
    expect(await save(plan, construct)).toMatchObject({
      ok: false,
      refusal: { problems: [{ path: ['note'], code: 'looks-like-patient-data' }] },
    });
    expect(await save(plan, construct, { notPatientData: true })).toMatchObject({ ok: true });
  });

  it('is not for a technician to write, and not saved where there is none', async () => {
    const plan = await begun();
    expect(await save(plan, plan.construct, { person: technician })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    expect(await save({ id: 'plan_nobody', revision: 1 }, plan.construct)).toMatchObject({
      refusal: { because: 'notFound' },
    });
  });

  it('can be thrown away at the revision seen; what was thrown away is on the ledger', async () => {
    const plan = await begun();
    const discard = (revision: number) =>
      discardPlanDraft({ db, now: NOW, person: surgeon, planId: plan.id, revision });
    expect(await discard(7)).toMatchObject({ refusal: { because: 'conflict' } });
    expect(await discard(1)).toEqual({ ok: true, value: null });
    expect(await listPlanVersions(db, UNPLANNED)).toEqual([]);
    expect(await lastEntry()).toMatchObject({ action: 'discard-plan-draft', detail: { caseId: UNPLANNED } });
  });
});

describe('confirming', () => {
  async function planned(): Promise<Construct> {
    const booked = await findCase(db, UNPLANNED);
    const plate = (await listPlates(db)).find(({ side }) => side === 'either');
    if (!booked || !plate) throw new Error('the demo has no plate for either side');
    const fills = Object.fromEntries(plate.holes.map(({ id }) => [id, { purpose: 'empty' as const }]));
    return {
      ...emptyConstruct(booked.region, booked.limb),
      plates: [{ key: 'P1', plateItemId: plate.id, zone: null, principle: null, fills }],
    };
  }
  const confirm = (plan: { id: string; revision: number }, person = surgeon) =>
    confirmPlan({ db, now: NOW, person, planId: planId.parse(plan.id), revision: plan.revision });

  it('freezes the plan: no save, no second confirming, no discarding, and the database refuses too', async () => {
    const plan = await begun(await planned());
    const confirmed = await confirm(plan);
    expect(confirmed).toMatchObject({
      ok: true,
      value: { status: 'confirmed', confirmedBy: surgeon.id, confirmedAt: NOW },
    });
    const now = { id: plan.id, revision: 2 };
    expect(await save(now, { ...plan.construct, bone: 'poor' })).toMatchObject({
      refusal: { because: 'frozen' },
    });
    expect(await confirm(now)).toMatchObject({ refusal: { because: 'frozen' } });
    expect(
      await discardPlanDraft({ db, now: NOW, person: surgeon, planId: plan.id, revision: 2 }),
    ).toMatchObject({ refusal: { because: 'frozen' } });
    await expect(
      db.tx(async (write) => write.update(plans).set({ body: {} }).where(eq(plans.id, plan.id))),
    ).rejects.toThrow(/never changes/);
    await expect(db.tx(async (write) => write.delete(plans).where(eq(plans.id, plan.id)))).rejects.toThrow(
      /never deleted/,
    );
  });

  it('is a surgeon’s alone', async () => {
    const plan = await begun(await planned());
    expect(await confirm(plan, technician)).toMatchObject({ refusal: { because: 'notPermitted' } });
  });

  it('is refused for a plan nobody looked at in this form', async () => {
    const plan = await begun(await planned());
    await save(plan, { ...plan.construct, bone: 'poor' }, { person: other });
    expect(await confirm(plan)).toMatchObject({
      refusal: { because: 'conflict', current: { construct: { bone: 'poor' } } },
    });
  });

  it('is refused with every stop named, and an empty plan with its reason', async () => {
    const construct = await planned();
    const [plate] = construct.plates;
    if (!plate) throw new Error('no plate was planned');
    await db.tx(async (write) =>
      write.update(items).set({ status: 'withdrawn' }).where(eq(items.id, plate.plateItemId)),
    );
    const plan = await begun({ ...construct, limb: construct.limb === 'left' ? 'right' : 'left' });
    const outcome = await confirm(plan);
    expect(
      outcome.ok ? [] : outcome.refusal.problems.map(({ code, path }) => `${code} ${path.join('/')}`),
    ).toEqual(['limb-differs limb', 'item-not-current plates/0/plateItemId']);
    const emptied = await save(plan, { ...plan.construct, limb: construct.limb, plates: [] });
    if (!emptied.ok) throw new Error('the draft was not saved');
    expect(await confirm({ id: plan.id, ...emptied.value })).toMatchObject({
      refusal: { problems: [{ code: 'nothing-planned' }] },
    });
  });

  it('is not barred by what is not established, and the ledger keeps what that was', async () => {
    const construct = await planned();
    const [plate] = construct.plates;
    const [open] = Object.keys(plate?.fills ?? {});
    if (!plate || !open) throw new Error('no plate was planned');
    delete plate.fills[open];
    const plan = await begun(construct);
    expect(await confirm(plan)).toMatchObject({ ok: true });
    expect((await lastEntry())?.detail).toMatchObject({
      notEstablished: [`plate P1, hole ${open}: hole-not-decided`],
    });
  });

  it('supersedes the version before, which a change began as its copy', async () => {
    const plan = await begun(await planned());
    await confirm(plan);
    const next = await beginPlanVersion({ db, now: NOW, newId, person: other, caseId: UNPLANNED });
    expect(next).toMatchObject({
      ok: true,
      value: { version: 2, status: 'draft', construct: plan.construct },
    });
    const again = await beginPlanVersion({ db, now: NOW, newId, person: surgeon, caseId: UNPLANNED });
    expect(again.ok && next.ok && again.value.id === next.value.id).toBe(true);
    if (!next.ok) throw new Error('no version was begun');
    await confirm(next.value);
    expect(
      (await listPlanVersions(db, UNPLANNED)).map(({ version, status }) => `${version} ${status}`),
    ).toEqual(['2 confirmed', '1 superseded']);
  });

  it('has nothing to change where nothing is confirmed', async () => {
    expect(await beginPlanVersion({ db, now: NOW, newId, person: surgeon, caseId: UNPLANNED })).toMatchObject(
      { refusal: { because: 'notFound' } },
    );
    expect(await beginPlanVersion({ db, now: NOW, newId, person: surgeon, caseId: IN_DRAFT })).toMatchObject({
      ok: true,
      value: { version: 2 },
    });
  });
});

import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { closeEmergencyQuestion } from '@/db/operations/emergency/close-question';
import { recordGone } from '@/db/operations/emergency/record-gone';
import { findEmergency } from '@/db/queries/emergency/record';
import type { Person } from '@/db/queries/people';
import { emergencySets, ledger, notices, plans, sets, theatreCounts, turnSteps } from '@/db/schema';
import type { CaseId } from '@/lib/identity/ids';
import { setId } from '@/lib/identity/ids';
import { demoDatabase } from '../../setup/database';
import { looked, newId, person, take } from './emergencyDesk';

const GONE = '2026-01-15T04:05:00.000Z';
const NOW = '2026-01-15T04:25:00.000Z';

let db: Database;
let technician: Person;
let lead: Person;

beforeEach(async () => {
  db = await demoDatabase();
  [technician, lead] = await Promise.all([person(db, 'technician'), person(db, 'decontaminationLead')]);
});

const setOf = async (code: string) => {
  const [row] = await db.read.select().from(sets).where(eq(sets.code, code));
  if (!row) throw new Error(`no set ${code}`);
  return row;
};
async function taken(codes: string[], goneAt: string | null): Promise<CaseId> {
  const asked = await looked(db, NOW, codes, { goneAt, startsAt: goneAt ?? NOW });
  const said = await take(asked, technician);
  if (!said.ok) throw new Error(JSON.stringify(said.refusal));
  return said.value.caseId;
}

describe('a set that has gone already', () => {
  it('is in theatre since then, recorded now: both times on the record, in its steps and in the ledger', async () => {
    const caseId = await taken(['SFL-05'], GONE);
    const set = await setOf('SFL-05');
    expect(set).toMatchObject({ step: 'inTheatre', caseId, stepSince: GONE });
    const kept = await findEmergency(db, caseId);
    expect(kept).toMatchObject({ happenedAt: GONE, recordedAt: NOW });
    expect(kept?.sets).toMatchObject([
      { code: 'SFL-05', gone: { at: GONE, recordedAt: NOW, by: technician.name }, against: [] },
    ]);
    const steps = await db.read.select().from(turnSteps).where(eq(turnSteps.setId, set.id));
    expect(steps.at(-1)).toMatchObject({ step: 'inTheatre', doneAt: GONE, enteredAt: NOW });
    const entries = await db.read.select().from(ledger).where(eq(ledger.enteredAt, NOW));
    const both = entries.filter(({ action }) => ['take-for-emergency', 'send-to-theatre'].includes(action));
    expect(both.map(({ doneAt }) => doneAt)).toEqual([GONE, GONE]);
  });

  it('although it was held is recorded all the same, stays held, and is a question that a lead settles', async () => {
    const caseId = await taken(['SFL-02'], GONE);
    expect((await setOf('SFL-02')).step).toBe('held');
    const kept = await findEmergency(db, caseId);
    expect(kept?.sets[0]).toMatchObject({ gone: { at: GONE, recordedAt: NOW } });
    expect(kept?.sets[0]?.against.length).toBeGreaterThan(0);
    const question = kept?.questions.find(({ kind }) => kind === 'againstRecord');
    expect(question).toMatchObject({ setCode: 'SFL-02', closed: null });
    const told = await db.read.select().from(notices).where(eq(notices.kind, 'goneAgainstRecord'));
    expect(told.length).toBe(4);
    const close = (by: Person) =>
      closeEmergencyQuestion({ db, now: NOW, person: by, caseId, questionId: question?.id ?? '' });
    expect(await close(technician)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    expect(await close(lead)).toMatchObject({ ok: true });
    expect(await close(lead)).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
  });

  it('before it was sterile is held, so that nothing entered later calls it sterile', async () => {
    const before = (await setOf('SFL-07')).step;
    expect(before).not.toBe('inSterileStore');
    await taken(['SFL-07'], GONE);
    expect(await setOf('SFL-07')).toMatchObject({
      step: 'held',
      heldBecause: 'loadUnknown',
      heldFrom: before,
    });
  });

  it('not at a time to come, and not so long ago that nobody remembers', async () => {
    for (const goneAt of ['2026-01-15T04:26:00.000Z', '2026-01-14T10:00:00.000Z']) {
      const asked = await looked(db, NOW, ['SFL-05'], { goneAt, startsAt: NOW });
      expect(await take(asked, technician)).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    }
  });
});

describe('a set taken first and gone later', () => {
  it('keeps when it went and when that was recorded, once', async () => {
    const caseId = await taken(['SFL-05'], null);
    const set = await setOf('SFL-05');
    const later = '2026-01-15T04:45:00.000Z';
    const went = '2026-01-15T04:30:00.000Z';
    const request = {
      db,
      now: later,
      newId,
      person: technician,
      caseId,
      setId: setId.parse(set.id),
      goneAt: went,
    };
    expect(await recordGone(request)).toEqual({ ok: true, value: { against: [] } });
    expect((await findEmergency(db, caseId))?.sets[0]?.gone).toMatchObject({ at: went, recordedAt: later });
    expect(await recordGone(request)).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    const change = db.tx((write) =>
      write.update(emergencySets).set({ goneAt: GONE }).where(eq(emergencySets.caseId, caseId)),
    );
    await expect(change).rejects.toThrow();
    const [entry] = await db.read.select().from(ledger).where(eq(ledger.action, 'record-gone-in-emergency'));
    expect(entry).toMatchObject({ doneAt: went, enteredAt: later });
  });
});

describe('what stays open', () => {
  it('the plan until a surgeon has confirmed one, the count until one by two people is closed', async () => {
    const caseId = await taken(['SFL-05'], GONE);
    const close = async (kind: string) => {
      const kept = await findEmergency(db, caseId);
      const questionId = kept?.questions.find((one) => one.kind === kind)?.id ?? '';
      return closeEmergencyQuestion({ db, now: NOW, person: technician, caseId, questionId });
    };
    expect(await close('plan')).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    const [other] = await db.read.select().from(plans).where(eq(plans.status, 'confirmed'));
    if (!other) throw new Error('no confirmed plan');
    await db.tx((write) => write.insert(plans).values({ ...other, id: newId('plan'), caseId, version: 1 }));
    expect(await close('plan')).toMatchObject({ ok: true });
    expect(await close('count')).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    await db.tx((write) =>
      write.insert(theatreCounts).values({
        id: newId('theatreCount'),
        caseId,
        moment: 'first',
        personId: 'person_ruth-okonjo',
        secondPersonId: 'person_piotr-lennard',
        beganAt: NOW,
        closedAt: NOW,
        entryCount: 0,
        entryDigest: 'none',
      }),
    );
    expect(await close('count')).toMatchObject({ ok: true });
    expect((await findEmergency(db, caseId))?.questions.every(({ closed }) => closed !== null)).toBe(true);
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'close-emergency-question'));
    expect(entries).toHaveLength(2);
  });
});

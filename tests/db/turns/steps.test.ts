import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { bringBackSet } from '@/db/operations/turns/bring-back-set';
import { endWash } from '@/db/operations/turns/end-wash';
import { holdSet } from '@/db/operations/turns/hold-set';
import { liftHold } from '@/db/operations/turns/lift-hold';
import { moveSet } from '@/db/operations/turns/move-set';
import { openSet } from '@/db/operations/turns/open-set';
import { receiveSet } from '@/db/operations/turns/receive-set';
import { reprocessSet } from '@/db/operations/turns/reprocess-set';
import { sendToTheatre } from '@/db/operations/turns/send-to-theatre';
import { withdrawSet } from '@/db/operations/turns/withdraw-set';
import type { Person } from '@/db/queries/people';
import {
  ledger,
  loads,
  notices,
  packs,
  setPromises,
  sets,
  settings,
  shortDecisions,
  turnSteps,
} from '@/db/schema';
import type { CaseId, NewId, SetId } from '@/lib/identity/ids';
import type { HeldBecause } from '@/lib/sets/setState';
import { forbiddenStatesOf } from './forbiddenStates';
import {
  CASE_IDS,
  countedIds,
  PEOPLE,
  PLACE_IDS,
  proofOf,
  SET_IDS,
  START,
  SURGEON_STANDS,
  smallHospital,
} from './smallHospital';
import { type Closing, closeOn } from './standIns';

let db: Database;
let newId: NewId;
let minutes: number;
const SET = SET_IDS[0] as SetId;

beforeEach(async () => {
  db = await smallHospital();
  newId = countedIds();
  minutes = 0;
});

const at = (more = 0) => new Date(Date.parse(START) + (minutes + more) * 60_000).toISOString();

async function set(id: SetId = SET) {
  const [row] = await db.read.select().from(sets).where(eq(sets.id, id));
  if (!row) throw new Error('no such set');
  return row;
}

/** Asks for an act on the set as it is, a quarter of an hour after the one before. */
async function request(person: Person = PEOPLE.technician, id: SetId = SET) {
  minutes += 15;
  return { db, now: at(), newId, person, setId: id, baseRevision: (await set(id)).revision };
}

async function close(...steps: Closing[]): Promise<void> {
  for (const how of steps) {
    minutes += 15;
    await db.tx((write) => closeOn(write, { of: SET, how, now: at(), newId }));
  }
}

/** From theatre to the sterile store. */
async function round(): Promise<void> {
  await receiveSet(await request());
  await beginWash(await request());
  await endWash({ ...(await request()), seen: 'clean' });
  await close('pack', 'startLoad', 'endLoad', 'acceptLoad');
  expect((await set()).step).toBe('inSterileStore');
}

const hold = async (because: HeldBecause, note = 'seen at the bench', person: Person = PEOPLE.technician) =>
  holdSet({ ...(await request(person)), because, note });

const lift = async (
  to: 'washing' | 'onBench' | 'packed' | 'inSterileStore' | 'awaitingAcceptance' | 'comingBack',
) => {
  const asked = await request(PEOPLE.decontaminationLead);
  return liftHold({ ...asked, to, reason: 'looked into', attestation: proofOf(asked.person, asked.now) });
};

const send = async (caseId: CaseId) =>
  sendToTheatre({ ...(await request(PEOPLE.scrubPractitioner)), caseId });

const codes = (outcome: { ok: boolean; refusal?: { problems: { code: string }[] } }) =>
  outcome.ok ? 'done' : outcome.refusal?.problems.map(({ code }) => code);

describe('a turn', () => {
  it('goes from theatre to theatre, each step with its person, its two times and its ledger entry', async () => {
    await round();
    expect(await send(CASE_IDS.today)).toMatchObject({ ok: true });
    await receiveSet(await request());
    const steps = await db.read
      .select()
      .from(turnSteps)
      .where(eq(turnSteps.setId, SET))
      .orderBy(turnSteps.seq);
    expect(steps.map(({ step }) => step)).toEqual([
      'inTheatre',
      'comingBack',
      'washing',
      'onBench',
      'packed',
      'inSteriliser',
      'awaitingAcceptance',
      'inSterileStore',
      'inTheatre',
      'comingBack',
    ]);
    // coming back begins a turn; the first row is from before turns were kept
    expect(new Set(steps.map(({ turnId }) => turnId)).size).toBe(3);
    const entries = await db.read.select().from(ledger).where(eq(ledger.subjectId, SET));
    expect(entries).toHaveLength(steps.length - 1);
    expect(await set()).toMatchObject({ caseId: null, packId: null, useBy: null });
    const [pack] = await db.read.select().from(packs).where(eq(packs.setId, SET));
    expect(pack?.state).toBe('opened');
    expect(await forbiddenStatesOf(db)).toEqual([]);
  });

  it('found dirty after wash is held for that, and only washing comes after', async () => {
    await receiveSet(await request());
    await beginWash(await request());
    expect(await endWash({ ...(await request()), seen: 'dirty', note: 'Blood in a bore' })).toMatchObject({
      ok: true,
    });
    expect(await set()).toMatchObject({ step: 'held', heldBecause: 'dirtyAfterWash', heldFrom: 'washing' });
    expect(codes(await lift('onBench'))).toEqual(['frozen']);
    expect(await lift('washing')).toMatchObject({ ok: true });
  });

  it('keeps when it was done beside when it was entered, and refuses the future and the time before the last step', async () => {
    const asked = await request();
    const early = { ...asked, doneAt: '2026-01-14T07:10:00+00:00' };
    expect(codes(await receiveSet({ ...asked, doneAt: at(1) }))).toEqual(['in-the-future']);
    expect(codes(await receiveSet({ ...asked, doneAt: '2026-01-14T05:59:00Z' }))).toEqual([
      'before-the-last-step',
    ]);
    expect(codes(await receiveSet({ ...asked, doneAt: 'this morning' }))).toEqual(['not-a-moment']);
    expect(await receiveSet(early)).toMatchObject({ ok: true });
    const [step] = await db.read.select().from(turnSteps).where(eq(turnSteps.step, 'comingBack'));
    expect(step).toMatchObject({ doneAt: '2026-01-14T07:10:00.000Z', enteredAt: asked.now });
    const [entry] = await db.read.select().from(ledger).where(eq(ledger.action, 'receive-set'));
    expect(entry).toMatchObject({ doneAt: '2026-01-14T07:10:00.000Z', enteredAt: asked.now });
  });

  it('of two people pressing at once one is heard, and the other is told what the set is now and by whom', async () => {
    const asked = await request();
    const other = { ...asked, person: PEOPLE.scrubPractitioner };
    const [one, two] = await Promise.all([receiveSet(asked), receiveSet(other)]);
    expect(one.ok).toBe(true);
    expect(two).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', current: { step: 'comingBack', by: PEOPLE.technician.name } },
    });
  });

  it('the same press sent twice by one person is done once', async () => {
    const asked = await request();
    const first = await receiveSet(asked);
    expect(await receiveSet(asked)).toEqual(first);
    expect(await db.read.select().from(turnSteps).where(eq(turnSteps.step, 'comingBack'))).toHaveLength(1);
  });
});

describe('a hold', () => {
  it('needs a reason of the vocabulary and a note without a patient’s data', async () => {
    expect(codes(await hold('recall', '  '))).toEqual(['needed']);
    expect(codes(await hold('recall', 'x'.repeat(401)))).toEqual(['too-long']);
    expect(codes(await hold('recall', 'for Mrs Mary Jones'))).toEqual(['looks-like-patient-data']);
    expect(codes(await hold('recall', 'notice 7'))).toBe('done');
  });

  it('tells the surgeon the set is promised to, and whoever held it when it is lifted', async () => {
    await hold('disputedCount');
    await lift('onBench');
    const told = await db.read.select().from(notices);
    expect(told.map(({ personId, kind }) => [personId, kind])).toEqual([
      [PEOPLE.surgeon.id, 'promisedSetHeld'],
      [PEOPLE.technician.id, 'holdLifted'],
    ]);
  });

  it('is lifted only by who may, with a fresh proof of one’s own, to where every reason lets it go', async () => {
    await round();
    await hold('recall');
    await hold('wrapWetTornOrUnsealed', 'a wet corner');
    expect(await set()).toMatchObject({ step: 'held', heldBecause: 'recall', heldFrom: 'inSterileStore' });
    const lead = await request(PEOPLE.decontaminationLead);
    const proof = proofOf(lead.person, lead.now);
    const ask = { ...lead, to: 'washing' as const, reason: 'the recall names other lots' };
    expect(codes(await liftHold({ ...ask, person: PEOPLE.technician, attestation: proof }))).toEqual([
      'not-permitted',
    ]);
    expect(codes(await liftHold({ ...ask, attestation: proofOf(PEOPLE.incidentLead, lead.now) }))).toEqual([
      'not-permitted',
    ]);
    expect(codes(await liftHold({ ...ask, attestation: proofOf(lead.person, START) }))).toEqual([
      'not-permitted',
    ]);
    expect(codes(await liftHold({ ...ask, reason: ' ', attestation: proof }))).toEqual(['needed']);
    // recall alone would let it go back to the store; the wet wrap does not
    expect(codes(await liftHold({ ...ask, to: 'inSterileStore', attestation: proof }))).toEqual(['frozen']);
    expect(await liftHold({ ...ask, attestation: proof })).toMatchObject({ ok: true });
    const [pack] = await db.read.select().from(packs).where(eq(packs.setId, SET));
    expect(pack?.state).toBe('opened');
    expect(await set()).toMatchObject({ step: 'washing', packId: null, useBy: null });
    const [entry] = await db.read.select().from(ledger).where(eq(ledger.action, 'lift-hold'));
    expect(entry?.detail).toMatchObject({
      attested: { meaning: 'iLiftThisHold', method: 'badgeAndPin' },
      held: [{ because: 'recall' }, { because: 'wrapWetTornOrUnsealed', note: 'a wet corner' }],
    });
    expect(await forbiddenStatesOf(db)).toEqual([]);
  });

  it('over a doubt alone goes back where it was, with its pack as it was', async () => {
    await round();
    await hold('loadUnknown');
    expect(await lift('inSterileStore')).toMatchObject({ ok: true });
    expect(await set()).toMatchObject({ step: 'inSterileStore', useBy: '2026-01-20' });
    expect(await forbiddenStatesOf(db)).toEqual([]);
  });

  it('does not let a set back into the store whose load was rejected meanwhile', async () => {
    await round();
    await hold('loadUnknown');
    await db.tx((write) => write.update(loads).set({ state: 'rejected' }));
    expect(codes(await lift('inSterileStore'))).toEqual(['frozen']);
    expect(await lift('washing')).toMatchObject({ ok: true });
  });
});

describe('going to theatre', () => {
  const unpromised = () => db.tx((write) => write.delete(setPromises));

  it('is for the case it is promised to, while that is to come', async () => {
    await round();
    expect(codes(await send(CASE_IDS.later))).toEqual(['promised-to-another', 'past-use-by']);
    expect(codes(await send(CASE_IDS.today))).toBe('done');
  });

  it('says everything that keeps the set here, at once', async () => {
    await unpromised();
    expect(codes(await send(CASE_IDS.over))).toEqual(['case-over', 'not-in-store']);
    await round();
    await db.tx((write) => decideShort(write, CASE_IDS.today, at(-1)));
    expect(codes(await send(CASE_IDS.later))).toEqual([
      'past-use-by',
      'short-for-another',
      'decision-lapsed',
    ]);
  });

  it('is for the one case a short set was let go for, until that lapses', async () => {
    await unpromised();
    await round();
    await db.tx((write) => decideShort(write, CASE_IDS.today, at(600)));
    expect(codes(await send(CASE_IDS.later))).toEqual(['past-use-by', 'short-for-another']);
    expect(codes(await send(CASE_IDS.today))).toBe('done');
  });

  it('tests use-by against the case date, good through the day printed', async () => {
    await unpromised();
    await round();
    expect(codes(await send(CASE_IDS.later))).toEqual(['past-use-by']);
    await db.tx((write) => write.update(packs).set({ useBy: '2026-01-21' }));
    await db.tx((write) => write.update(sets).set({ useBy: '2026-01-21' }).where(eq(sets.id, SET)));
    expect(codes(await send(CASE_IDS.later))).toBe('done');
  });

  it('where sterility ends by events tests no date, and a torn wrap ends it', async () => {
    await unpromised();
    await db.tx((write) =>
      write.insert(settings).values({ key: 'sterility', value: { policy: 'eventRelated' } }),
    );
    await round();
    await hold('wrapWetTornOrUnsealed', 'torn at a corner');
    expect(codes(await send(CASE_IDS.today))).toEqual(['held']);
    expect(codes(await lift('inSterileStore'))).toEqual(['frozen']);
    await lift('onBench');
    await close('pack', 'startLoad', 'endLoad', 'acceptLoad');
    expect(codes(await send(CASE_IDS.later))).toBe('done');
  });
});

describe('a sealed set', () => {
  it('opened on the bench, or sent round again, is sterile no more', async () => {
    await round();
    expect(codes(await reprocessSet({ ...(await request()), reason: 'past use-by' }))).toBe('done');
    expect(await set()).toMatchObject({ step: 'washing', packId: null, useBy: null, readyAt: null });
    await endWash({ ...(await request()), seen: 'clean' });
    await close('pack');
    expect(codes(await openSet(await request()))).toBe('done');
    const states = (await db.read.select().from(packs)).map(({ state }) => state);
    expect(states).toEqual(['opened', 'undone']);
    expect(await forbiddenStatesOf(db)).toEqual([]);
  });

  it('out of service is not opened, and its pack is left as it was', async () => {
    await round();
    await withdrawSet({ ...(await request(PEOPLE.theatreManager)), reason: 'being replaced' });
    expect(codes(await openSet(await request()))).toEqual(['frozen']);
    expect((await db.read.select().from(packs)).map(({ state }) => state)).toEqual(['sterile']);
  });
});

describe('out of service', () => {
  it('a set takes no step, the promised surgeon is told, and back in service it is opened first', async () => {
    await round();
    const withdrawn = await withdrawSet({
      ...(await request(PEOPLE.theatreManager)),
      reason: 'being replaced',
    });
    expect(withdrawn.ok).toBe(true);
    expect(codes(await send(CASE_IDS.today))).toEqual(['frozen']);
    expect((await db.read.select().from(notices)).map(({ kind }) => kind)).toEqual(['promisedSetWithdrawn']);
    const back = await bringBackSet({
      ...(await request(PEOPLE.theatreManager)),
      reason: 'needed after all',
    });
    expect(back.ok).toBe(true);
    expect(await set()).toMatchObject({ step: 'onBench', withdrawnAt: null, packId: null });
    expect(await forbiddenStatesOf(db)).toEqual([]);
  });

  it('is not possible while the set is in theatre or in a steriliser', async () => {
    expect(codes(await withdrawSet({ ...(await request(PEOPLE.theatreManager)), reason: 'x' }))).toEqual([
      'frozen',
    ]);
  });
});

describe('moving', () => {
  it('keeps from and to in the ledger, and goes to no place out of use', async () => {
    const moved = await moveSet({ ...(await request()), placeId: PLACE_IDS.store });
    expect(moved).toMatchObject({ ok: true, value: { revision: 2 } });
    expect(codes(await moveSet({ ...(await request()), placeId: PLACE_IDS.outOfUse }))).toEqual(['frozen']);
    // there already: no move, no error, nothing written
    expect(await moveSet({ ...(await request()), placeId: PLACE_IDS.store })).toMatchObject({
      value: { revision: 2 },
    });
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'move-set'));
    expect(entries.map(({ detail }) => detail)).toEqual([{ from: null, to: PLACE_IDS.store, revision: 2 }]);
  });
});

async function decideShort(
  write: Parameters<Parameters<Database['tx']>[0]>[0],
  caseId: CaseId,
  lapsesAt: string,
) {
  const now = await set();
  await write.insert(shortDecisions).values({
    id: 'decision_1',
    setId: SET,
    turnId: now.turnId ?? '',
    kind: 'oneCase',
    lines: [],
    substitutes: [],
    reason: 'no other set in time',
    caseId,
    approvals: [SURGEON_STANDS],
    decidedAt: START,
    lapsesAt,
  });
  await write
    .update(packs)
    .set({ decisionId: 'decision_1', forCaseId: caseId })
    .where(eq(packs.id, now.packId ?? ''));
}

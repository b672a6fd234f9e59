import { and, eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { beginTheatreCount } from '@/db/operations/theatreCounts/begin-theatre-count';
import { closeTheatreCount } from '@/db/operations/theatreCounts/close-theatre-count';
import { recordTheatreEntry } from '@/db/operations/theatreCounts/record-theatre-entry';
import { settleQuestion } from '@/db/operations/theatreCounts/settle-question';
import { workOnQuestion } from '@/db/operations/theatreCounts/work-on-question';
import { sendToTheatre } from '@/db/operations/turns/send-to-theatre';
import { countSubjectOf, theatreEntriesOf } from '@/db/queries/theatreCounts/counted';
import { countsScreen } from '@/db/queries/theatreCounts/countsScreen';
import { openQuestionsOf } from '@/db/queries/theatreCounts/questions';
import { setContents, theatreQuestions } from '@/db/schema';
import { questionId, setId, theatreCountId } from '@/lib/identity/ids';
import type { CountMoment, TheatreAct } from '@/lib/theatreCounts/act';
import { demoDatabase } from '../../setup/database';
import { codesOf, KitDesk, saidOf } from './kitDesk';

/** The ankle of today with its set in theatre. */
async function ankle() {
  const desk = new KitDesk(await demoDatabase(), 'LM-26-2HXD');
  const sent = await sendToTheatre({
    db: desk.db,
    now: desk.now(),
    newId: desk.newId,
    person: await desk.person('wren-adeyemi'),
    setId: setId.parse('set_sfs-01'),
    baseRevision: (await desk.set('SFS-01')).revision,
    caseId: desk.caseId,
  });
  expect(sent.ok).toBe(true);
  return desk;
}

const line = (id: string) => ({ kind: 'line', setId: 'set_sfs-01', lineId: id }) as never;

/** Counts every line as recorded, but for those named; closes it with two people. */
async function countAll(
  desk: KitDesk,
  moment: CountMoment,
  {
    but = {},
    more = [],
    second = 'piotr-lennard',
  }: { but?: Record<string, number>; more?: TheatreAct[]; second?: string } = {},
) {
  const person = await desk.person('ruth-okonjo');
  const begun = await beginTheatreCount({
    db: desk.db,
    now: desk.now(),
    person,
    workstationId: null,
    caseId: desk.caseId,
    moment,
    countId: theatreCountId.parse(desk.newId('theatreCount')),
  });
  if (!begun.ok) return begun;
  const countId = theatreCountId.parse(begun.value.countId);
  const { lines } = await countSubjectOf(desk.db.read, desk.caseId, moment);
  // a count begun before is taken up with the figures it has
  const entryIds = (await theatreEntriesOf(desk.db.read, countId)).map(({ id }) => id);
  const acts: TheatreAct[] = [
    ...lines.map(
      ({ lineId, recorded }): TheatreAct => ({
        kind: 'counted',
        thing: line(lineId),
        pieces: but[lineId] ?? recorded ?? 0,
      }),
    ),
    ...more,
  ];
  for (const act of acts) {
    const entry = { id: desk.newId('entry'), act, doneAt: desk.now() };
    entryIds.push(entry.id);
    const done = await recordTheatreEntry({
      db: desk.db,
      now: desk.now(),
      person,
      sessionId: null,
      countId,
      entry,
    });
    expect(saidOf(done)).toEqual([]);
  }
  const at = desk.now();
  const other = await desk.person(second);
  return closeTheatreCount({
    db: desk.db,
    now: at,
    newId: desk.newId,
    person,
    countId,
    entryIds,
    attestation: desk.proof(person, 'iCounted', at),
    second: { person: other, attestation: desk.proof(other, 'iCounted', at) },
  });
}

async function withQuestion() {
  const desk = await ankle();
  const { lines } = await countSubjectOf(desk.db.read, desk.caseId, 'first');
  const bit = lines.find(({ recorded }) => (recorded ?? 0) >= 2);
  if (!bit) throw new Error('no line of two');
  expect(await countAll(desk, 'first')).toMatchObject({ ok: true, value: { questions: 0 } });
  const closed = await countAll(desk, 'final', { but: { [bit.lineId]: (bit.recorded ?? 0) - 2 } });
  expect(closed).toMatchObject({ ok: true, value: { questions: 1 } });
  const [question] = await desk.db.read
    .select()
    .from(theatreQuestions)
    .where(eq(theatreQuestions.caseId, desk.caseId));
  return { desk, bit, id: questionId.parse(question?.id) };
}

async function settle(desk: KitDesk, id: string, as: 'accountedFor' | 'notFound', names: [string, string]) {
  const at = desk.now();
  const [person, second] = [await desk.person(names[0]), await desk.person(names[1])];
  return settleQuestion({
    db: desk.db,
    now: at,
    person,
    questionId: questionId.parse(id),
    as,
    because: 'It lay under the drape.',
    attestation: desk.proof(person, 'iSettleThis', at),
    second: { person: second, attestation: desk.proof(second, 'iSettleThis', at) },
  });
}

describe('counts in theatre', () => {
  it('need another person, a first before a final one, and every line of an open set', async () => {
    const desk = await ankle();
    expect(saidOf((await countAll(desk, 'final')) as never).join(' ')).toContain('has no first count');
    expect((await countAll(desk, 'first', { second: 'ruth-okonjo' })).ok).toBe(false);
    expect(await countAll(desk, 'first')).toMatchObject({ ok: true, value: { questions: 0 } });
  });

  it('take what is implanted off what ought to be there', async () => {
    const desk = await ankle();
    await countAll(desk, 'first');
    const { lines } = await countSubjectOf(desk.db.read, desk.caseId, 'final');
    const screw = lines.find(({ recorded }) => (recorded ?? 0) >= 2);
    const gone: TheatreAct = { kind: 'implanted', thing: line(screw?.lineId ?? ''), pieces: 2 };
    const but = { [screw?.lineId ?? '']: (screw?.recorded ?? 0) - 2 };
    expect(await countAll(desk, 'final', { but, more: [gone] })).toMatchObject({
      ok: true,
      value: { questions: 0 },
    });
    expect(await findLedgerBreak(desk.db.read)).toBeNull();
  });

  it('leave one open question for a thing that does not come out, however often it is counted', async () => {
    const { desk, bit } = await withQuestion();
    await countAll(desk, 'final', { but: { [bit.lineId]: (bit.recorded ?? 0) - 1 } });
    expect(await openQuestionsOf(desk.db, ['set_sfs-01'])).toMatchObject([
      { thing: bit.name, acts: [{ kind: 'countedAgain', pieces: (bit.recorded ?? 0) - 1 }] },
    ]);
    // a count that comes out closes nothing either
    await countAll(desk, 'final');
    expect(await openQuestionsOf(desk.db, ['set_sfs-01'])).toHaveLength(1);
  });
});

describe('a closed count', () => {
  it('tells the figures it was closed with, whatever the set holds since', async () => {
    const { desk, bit } = await withQuestion();
    const closed = async () => (await countsScreen(desk.db, desk.caseId)).closed;
    const before = await closed();
    expect(before.map(({ moment }) => moment)).toEqual(['first', 'final']);
    const figure = before[0]?.figures.find(({ lineId }) => lineId === bit.lineId);
    expect(figure).toMatchObject({ expected: bit.recorded, counted: bit.recorded });
    // back at the bench somebody finds fewer, as the next count of it says
    await desk.db.tx((write) =>
      write
        .update(setContents)
        .set({ found: (bit.recorded ?? 0) - 2 })
        .where(and(eq(setContents.setId, 'set_sfs-01'), eq(setContents.lineId, bit.lineId))),
    );
    expect(await closed()).toEqual(before);
  });
});

describe('an open question', () => {
  it('is worked on without being settled, and settled by two people once all is accounted for', async () => {
    const { desk, id } = await withQuestion();
    const person = await desk.person('ruth-okonjo');
    const work = (act: object) =>
      workOnQuestion({
        db: desk.db,
        now: desk.now(),
        person,
        questionId: id,
        act: { id: desk.newId('entry'), ...act },
      });
    expect(saidOf(await work({ kind: 'xRayAsked', note: null }))).toEqual([]);
    expect(codesOf(await settle(desk, id, 'accountedFor', ['ruth-okonjo', 'piotr-lennard']))).toEqual([
      'not-accounted',
    ]);
    expect(await work({ kind: 'found', pieces: 1, note: 'Under the drape.' })).toMatchObject({
      ok: true,
      value: { unaccounted: 1 },
    });
    expect(codesOf(await work({ kind: 'found', pieces: 2, note: 'Two more.' }))).toEqual([
      'more-than-missing',
    ]);
    expect(await work({ kind: 'discarded', pieces: 1, note: 'With the sharps.' })).toMatchObject({
      ok: true,
      value: { unaccounted: 0 },
    });
    expect(await openQuestionsOf(desk.db, ['set_sfs-01'])).toHaveLength(1);
    expect((await settle(desk, id, 'accountedFor', ['ruth-okonjo', 'ruth-okonjo'])).ok).toBe(false);
    expect(saidOf(await settle(desk, id, 'accountedFor', ['ruth-okonjo', 'piotr-lennard']))).toEqual([]);
    expect(await openQuestionsOf(desk.db, ['set_sfs-01'])).toEqual([]);
    expect((await work({ kind: 'stillOpen', note: 'Once more.' })).ok).toBe(false);
  });

  it('is settled as not found only with one who answers for that', async () => {
    const { desk, id } = await withQuestion();
    expect(saidOf(await settle(desk, id, 'notFound', ['ruth-okonjo', 'piotr-lennard'])).join(' ')).toContain(
      'theatre manager',
    );
    expect(saidOf(await settle(desk, id, 'notFound', ['ruth-okonjo', 'gwen-sallis']))).toEqual([]);
  });

  it('keeps its figures whatever the program asks', async () => {
    const { desk, id } = await withQuestion();
    await expect(
      desk.db.tx((write) =>
        write.update(theatreQuestions).set({ counted: 0, expected: 1 }).where(eq(theatreQuestions.id, id)),
      ),
    ).rejects.toThrow(/keeps its figures/);
    await expect(
      desk.db.tx((write) => write.delete(theatreQuestions).where(eq(theatreQuestions.id, id))),
    ).rejects.toThrow(/never deleted/);
  });
});

import { and, eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { Problem } from '@/lib/identity/result';
import { sendProblems } from '@/lib/turns/send';
import { emergencyWords as words } from '@/lib/wording/emergency';
import { turnWords } from '@/lib/wording/turns';
import type { Queries } from '../../client';
import type { Person } from '../../queries/people';
import { sendFacts } from '../../queries/turns/sendFacts';
import { emergencyQuestions, emergencySets } from '../../schema';
import { noteSent } from '../caseLife/note-set';
import type { CaseRow } from '../theatre/at-case';
import { holdInside } from '../turns/hold-set';
import { type SetRow, takeStep } from '../turns/take-step';
import { stop } from './stop';
import { tellLeads } from './tell-leads';

/**
 * What keeps a set from being taken for a case: in the sterile store, all that keeps it from going there; on its way, that it is
 * held, waits for a decision, or is out of service. A set on its way is promised, not given: it goes once it is sterile.
 */
export async function takingProblems(
  write: Queries,
  set: SetRow,
  booked: CaseRow,
  now: string,
): Promise<Problem[]> {
  const problem = (code: string, message: string): Problem => ({ path: ['sets', set.code], code, message });
  if (set.withdrawnAt !== null) return [problem('out-of-service', turnWords.withdrawn(set.code))];
  if (set.step === 'held') return [problem('held', words.heldStill(set.code))];
  if (set.step === 'shortAwaitingDecision')
    return [problem('awaits-decision', words.awaitsDecision(set.code))];
  if (set.step !== 'inSterileStore') return [];
  return sendProblems(await sendFacts(write, set, booked, now));
}

/** What keeps a set from being recorded as in theatre, whoever saw it there: for another case it may have been let go short. */
const NEVER_TO_THEATRE: readonly string[] = ['short-for-another', 'out-of-service', 'on-other-kit'];

interface SetGoes {
  set: SetRow;
  booked: CaseRow;
  goneAt: string;
  person: Person;
  now: string;
  newId: NewId;
}

/**
 * Records that a set has gone to theatre for an emergency, when that was and when it is recorded. What is done is done: a set
 * whose record was against it is recorded as gone all the same, with everything that was against it, as a question for the lead.
 * Where the record does not let it go to theatre at all, it is held, so that nothing that is entered later calls it sterile.
 *
 * @returns what was against it, in sentences
 */
export async function setGoes(write: Queries, request: SetGoes): Promise<string[]> {
  const { set, booked, goneAt, person, now, newId } = request;
  const problems =
    set.withdrawnAt === null
      ? sendProblems(await sendFacts(write, set, booked, now))
      : [{ code: 'out-of-service', message: turnWords.withdrawn(set.code) }];
  const early = goneAt < set.stepSince;
  const against = [
    ...problems.map(({ message }) => message),
    ...(early ? [turnWords.beforeLastStep(set.stepSince, now)] : []),
  ];
  const going = {
    set,
    person,
    now,
    newId,
    // the order of its steps is the order in which they were taken; when it went stands with the emergency
    doneAt: early ? set.stepSince : goneAt,
    detail: { caseId: booked.id, packId: set.packId, goneAt, ...(against.length > 0 ? { against } : {}) },
  };
  const letGo =
    set.step === 'inSterileStore' && problems.every(({ code }) => !NEVER_TO_THEATRE.includes(code));
  const done = letGo
    ? await takeStep(write, {
        ...going,
        to: 'inTheatre',
        action: 'send-to-theatre',
        change: { caseId: booked.id },
      })
    : await holdInside(write, {
        ...going,
        because: 'loadUnknown',
        note: words.goneNote(booked.reference),
        action: 'hold-set',
      });
  if (!done.ok) stop(done);
  if (letGo)
    await noteSent(write, {
      setId: set.id,
      caseId: booked.id,
      packId: set.packId,
      placeId: set.placeId,
      personId: person.id,
      doneAt: going.doneAt,
      now,
      newId,
    });
  await write
    .update(emergencySets)
    .set({ goneAt, goneRecordedAt: now, goneRecordedBy: person.id, against })
    .where(and(eq(emergencySets.caseId, booked.id), eq(emergencySets.setId, set.id)));
  if (against.length > 0) {
    await write.insert(emergencyQuestions).values({
      id: newId('openQuestion'),
      caseId: booked.id,
      kind: 'againstRecord',
      setId: set.id,
      openedAt: now,
    });
    await tellLeads(write, {
      kind: 'goneAgainstRecord',
      detail: { setCode: set.code, forCase: booked.reference, goneAt, by: person.name },
      href: `/emergency/${booked.id}`,
      person,
      now,
      newId,
    });
  }
  return against;
}

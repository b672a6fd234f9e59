import { and, eq } from 'drizzle-orm';
import { goneProblems } from '@/lib/emergency/gone';
import type { CaseId, NewId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { emergencyWords as words } from '@/lib/wording/emergency';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, emergencySets, sets } from '../../schema';
import { setGoes } from './set-goes';
import { stop, stopping } from './stop';

interface RecordGone {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  caseId: CaseId;
  setId: SetId;
  goneAt: string;
}

/** Records that a set taken for an emergency has gone to theatre: when it did, and that it is recorded now. */
export async function recordGone(request: RecordGone): Promise<Outcome<{ against: string[] }, never>> {
  const { db, now, newId, person, caseId, setId, goneAt } = request;
  if (!may(person, 'takeForEmergency')) return refused('notPermitted', words.mayNotTake(person.name));
  const problems = goneProblems(goneAt, now);
  if (problems.length > 0) return refusedFor(problems);
  return stopping(
    db.tx(async (write) => {
      const [found] = await write
        .select({ taken: emergencySets, set: sets, booked: cases })
        .from(emergencySets)
        .innerJoin(sets, eq(sets.id, emergencySets.setId))
        .innerJoin(cases, eq(cases.id, emergencySets.caseId))
        .where(and(eq(emergencySets.caseId, caseId), eq(emergencySets.setId, setId)));
      if (!found) return stop(refused('notFound', words.noSuchEmergency));
      const { taken, set, booked } = found;
      if (taken.goneAt !== null) stop(refused('frozen', words.goneAlready(set.code, taken.goneAt, now)));
      const there = set.step === 'inTheatre' && set.caseId === booked.id;
      if (there)
        // sent in the usual way meanwhile: the step stands, and its time is the one on record
        await write
          .update(emergencySets)
          .set({ goneAt: set.stepSince, goneRecordedAt: now, goneRecordedBy: person.id })
          .where(and(eq(emergencySets.caseId, caseId), eq(emergencySets.setId, setId)));
      const against = there ? [] : await setGoes(write, { set, booked, goneAt, person, now, newId });
      await appendLedger(write, {
        doneAt: there ? set.stepSince : goneAt,
        enteredAt: now,
        personId: person.id,
        action: 'record-gone-in-emergency',
        subjectKind: 'case',
        subjectId: booked.id,
        detail: { setId, setCode: set.code, ...(against.length > 0 ? { against } : {}) },
      });
      return { against };
    }),
  );
}

import { and, eq, isNotNull } from 'drizzle-orm';
import type { CaseId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { emergencyWords as words } from '@/lib/wording/emergency';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, emergencyQuestions, plans, theatreCounts } from '../../schema';

interface CloseQuestion {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  caseId: CaseId;
  questionId: string;
}

/**
 * Closes what an emergency left open, by a person who says so. The plan is closed once a surgeon has confirmed it, the count once
 * one by two people is closed; how a set stands that went against its record, by a decontamination lead alone.
 */
export async function closeEmergencyQuestion(
  request: CloseQuestion,
): Promise<Outcome<{ closedAt: string }, never>> {
  const { db, now, person, caseId, questionId } = request;
  if (!may(person, 'closeEmergencyQuestion')) return refused('notPermitted', words.mayNotClose(person.name));
  return db.tx(async (write) => {
    const [found] = await write
      .select({ question: emergencyQuestions, reference: cases.reference })
      .from(emergencyQuestions)
      .innerJoin(cases, eq(cases.id, emergencyQuestions.caseId))
      .where(and(eq(emergencyQuestions.id, questionId), eq(emergencyQuestions.caseId, caseId)));
    if (!found) return refused('notFound', words.noSuchQuestion);
    const { question, reference } = found;
    if (question.closedAt !== null) return refused('conflict', words.closedAlready);
    if (question.kind === 'againstRecord' && !may(person, 'settleGoneAgainstRecord'))
      return refused('notPermitted', words.mayNotSettleRecord(person.name));
    if (question.kind === 'plan') {
      const [confirmed] = await write
        .select({ id: plans.id })
        .from(plans)
        .where(and(eq(plans.caseId, caseId), eq(plans.status, 'confirmed')));
      if (!confirmed) return refused('frozen', words.planNotConfirmed(reference));
    }
    if (question.kind === 'count') {
      const [counted] = await write
        .select({ id: theatreCounts.id })
        .from(theatreCounts)
        .where(and(eq(theatreCounts.caseId, caseId), isNotNull(theatreCounts.closedAt)));
      if (!counted) return refused('frozen', words.notCounted(reference));
    }
    await write
      .update(emergencyQuestions)
      .set({ closedAt: now, closedBy: person.id })
      .where(eq(emergencyQuestions.id, questionId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'close-emergency-question',
      subjectKind: 'case',
      subjectId: caseId,
      detail: { kind: question.kind, setId: question.setId },
    });
    return { ok: true, value: { closedAt: now } };
  });
}

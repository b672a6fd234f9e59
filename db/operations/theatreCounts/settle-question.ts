import { and, eq, isNull } from 'drizzle-orm';
import type { QuestionId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { type SettledAs, unaccounted } from '@/lib/theatreCounts/question';
import { theatreCountWords as words } from '@/lib/wording/theatre-counts';
import { turnWords } from '@/lib/wording/turns';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { theatreQuestions } from '../../schema';
import { actsOf } from './work-on-question';

interface SettleQuestion {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  questionId: QuestionId;
  as: SettledAs;
  because: string;
  attestation: Attestation;
  second: { person: Person; attestation: Attestation };
}

/**
 * Settles an open question, for which two people stand and say how. All pieces accounted for, or settled as not found by
 * somebody who answers for that; it never happens by itself.
 */
export async function settleQuestion(request: SettleQuestion): Promise<Outcome<{ as: SettledAs }, never>> {
  const { db, now, person, questionId, as, attestation, second } = request;
  const because = request.because.trim();
  for (const one of [person, second.person])
    if (!may(one, 'workOnQuestion'))
      return refused('notPermitted', words.mayNot(one.name, 'settle a question of a count'));
  return db.tx(async (write) => {
    const [question] = await write.select().from(theatreQuestions).where(eq(theatreQuestions.id, questionId));
    if (!question) return refused('notFound', words.noSuchQuestion);
    if (question.settledAt !== null)
      return question.settledBy === person.id && question.settledAs === as
        ? { ok: true, value: { as } }
        : refused('frozen', words.settledAlready);
    if (second.person.id === person.id) return refused('notPermitted', words.secondIsSame);
    const proven =
      attests(attestation, person.id, 'iSettleThis', now) &&
      attests(second.attestation, second.person.id, 'iSettleThis', now);
    if (!proven) return refused('notPermitted', words.proofNeeded);
    if (as === 'notFound' && ![person, second.person].some(({ role }) => may({ role }, 'settleAsNotFound')))
      return refused('notPermitted', words.notFoundTakes);
    const acts = await actsOf(write, questionId);
    const left = unaccounted(question, acts);
    const problems: Problem[] = [];
    if (because === '') problems.push({ path: ['because'], code: 'needed', message: words.reasonNeeded });
    if (because.length > 400)
      problems.push({ path: ['because'], code: 'too-long', message: turnWords.tooLong });
    problems.push(...textProblems(because, ['because']));
    if (as === 'accountedFor' && left > 0)
      problems.push({ path: ['as'], code: 'not-accounted', message: words.notAccounted(left) });
    if (problems.length > 0) return refusedFor(problems);
    await write
      .update(theatreQuestions)
      .set({
        settledBy: person.id,
        settledWith: second.person.id,
        settledAt: now,
        settledAs: as,
        settledBecause: because,
      })
      .where(and(eq(theatreQuestions.id, questionId), isNull(theatreQuestions.settledAt)));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'settle-question',
      subjectKind: 'case',
      subjectId: question.caseId,
      detail: {
        questionId,
        thing: question.thing,
        setId: question.setId,
        expected: question.expected,
        counted: question.counted,
        unaccounted: left,
        as,
        because,
        attested: said(attestation),
        second: { personId: second.person.id, attested: said(second.attestation) },
      },
    });
    return { ok: true, value: { as } };
  });
}

const said = ({ meaning, method, at }: Attestation) => ({ meaning, method, at });

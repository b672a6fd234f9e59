import { asc, eq } from 'drizzle-orm';
import type { QuestionId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { questionActKind, sentQuestionAct, unaccounted } from '@/lib/theatreCounts/question';
import { theatreCountWords as words } from '@/lib/wording/theatre-counts';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { theatreQuestionActs, theatreQuestions } from '../../schema';

interface WorkOnQuestion {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  questionId: QuestionId;
  /** As sent from outside; parsed here. Its id is made where it is entered. */
  act: unknown;
}

/** Records what was done about an open question. It stays open: two people settle it, nothing else does. */
export async function workOnQuestion(
  request: WorkOnQuestion,
): Promise<Outcome<{ id: string; unaccounted: number }, never>> {
  const { db, now, person, questionId } = request;
  if (!may(person, 'workOnQuestion'))
    return refused('notPermitted', words.mayNot(person.name, 'work on a question of a count'));
  const parsed = sentQuestionAct.safeParse(request.act);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const act = parsed.data;
  return db.tx(async (write) => {
    const [question] = await write.select().from(theatreQuestions).where(eq(theatreQuestions.id, questionId));
    if (!question) return refused('notFound', words.noSuchQuestion);
    const acts = await actsOf(write, questionId);
    const left = unaccounted(question, acts);
    const before = acts.find(({ id }) => id === act.id);
    if (before)
      return before.kind === act.kind && before.personId === person.id
        ? { ok: true, value: { id: act.id, unaccounted: left } }
        : refused('conflict', words.idTaken);
    if (question.settledAt !== null) return refused('frozen', words.settledAlready);
    const pieces = 'pieces' in act ? act.pieces : null;
    if (pieces !== null && pieces > left)
      return refusedFor([
        { path: ['pieces'], code: 'more-than-missing', message: words.moreThanMissing(left) },
      ]);
    const inText = textProblems(act.note ?? '', ['note']);
    if (inText.length > 0) return refusedFor(inText);
    const [taken] = await write.select().from(theatreQuestionActs).where(eq(theatreQuestionActs.id, act.id));
    if (taken) return refused('conflict', words.idTaken);
    await write.insert(theatreQuestionActs).values({
      id: act.id,
      questionId,
      kind: act.kind,
      pieces,
      note: act.note,
      personId: person.id,
      doneAt: now,
      enteredAt: now,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'work-on-question',
      subjectKind: 'case',
      subjectId: question.caseId,
      detail: { questionId, thing: question.thing, setId: question.setId, ...act, pieces },
    });
    return { ok: true, value: { id: act.id, unaccounted: left - (pieces ?? 0) } };
  });
}

/** What was done about a question, in the order it was done. */
export async function actsOf(write: Queries, questionId: string) {
  const rows = await write
    .select()
    .from(theatreQuestionActs)
    .where(eq(theatreQuestionActs.questionId, questionId))
    .orderBy(asc(theatreQuestionActs.doneAt), asc(theatreQuestionActs.id));
  return rows.map((row) => ({ ...row, kind: questionActKind.parse(row.kind) }));
}

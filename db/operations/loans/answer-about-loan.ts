import { and, eq, isNull } from 'drizzle-orm';
import type { LoanQuestionId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { loanQuestions, people } from '../../schema';
import { tellPerson } from '../turns/tell-person';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { tellOfLoan } from './tell-of-loan';

interface AnswerAboutLoan extends AtLoan {
  questionId: LoanQuestionId;
  answer: 'yes' | 'no';
  words: string;
}

const MOST_CHARACTERS = 400;

/** The answer of the person who was asked, and of nobody else, with their reason. It stands. */
export async function answerAboutLoan(
  request: AnswerAboutLoan,
): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, newId, questionId, answer } = request;
  const said = request.words.trim();
  return atLoan(request, 'readHospital', ['here'], async (write, record) => {
    const { loan, questions } = record;
    const question = questions.find(({ id }) => id === questionId);
    if (!question) return refused('notFound', words.noSuchQuestion);
    if (question.answer !== null) return refused('frozen', words.answeredAlready);
    if (question.askedOf !== person.id) {
      const [asked] = await write
        .select({ name: people.name })
        .from(people)
        .where(eq(people.id, question.askedOf));
      return refused('notPermitted', words.notAskedOfYou(asked?.name ?? question.askedOf));
    }
    const path = ['words'];
    const problems = textProblems(said, path);
    if (said === '') problems.push({ path, code: 'needed', message: words.needed });
    if (said.length > MOST_CHARACTERS)
      problems.push({ path, code: 'too-long', message: words.tooLong(MOST_CHARACTERS) });
    if (problems.length > 0) return refusedFor(problems);
    await write
      .update(loanQuestions)
      .set({ answer, answerWords: said, answeredAt: now })
      .where(and(eq(loanQuestions.id, questionId), isNull(loanQuestions.answer)));
    const kind = question.kind as 'acceptLate' | 'useWithout';
    const changed = await changeLoan(write, {
      loan,
      action: 'answer-about-loan',
      person,
      now,
      detail: { questionId, kind, answer, words: said },
    });
    if (question.askedBy !== person.id)
      await tellPerson(write, {
        personId: question.askedBy,
        kind: 'loanQuestionAnswered',
        detail: { number: loan.number, question: kind, answer, words: said, by: person.name },
        href: `/loans/${loan.id}`,
        now,
        newId,
      });
    const news = (
      {
        acceptLate: { yes: 'takenLate', no: 'notTakenLate' },
        useWithout: { yes: 'usedWithout', no: 'notUsedWithout' },
      } as const
    )[kind][answer];
    await tellOfLoan(write, record, { news, words: said, person, now, newId, butFor: question.askedBy });
    return { ok: true, value: changed };
  });
}

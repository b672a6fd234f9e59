import { eq } from 'drizzle-orm';
import { type LoanQuestionId, loanQuestionId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { loanQuestionEntry } from '@/lib/loans/entries';
import type { QuestionKind } from '@/lib/loans/nextStep';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Queries } from '../../client';
import type { LoanRecord } from '../../queries/loans/facts';
import { loanQuestions, people } from '../../schema';
import { tellPerson } from '../turns/tell-person';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface AskAboutLoan extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * Puts a decision to one person by name: whether a loan is taken although it came late, or used without what is not in
 * it. Nothing goes on before they have answered, and nothing answers for them.
 */
export async function askAboutLoan(
  request: AskAboutLoan,
): Promise<Outcome<{ id: LoanQuestionId; revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  const parsed = loanQuestionEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const asked = parsed.data;
  return atLoan(request, 'keepLoans', ['here'], async (write, record) => {
    const { loan, questions } = record;
    if (!isOpen(record, asked.kind)) return refused('frozen', words.nothingToAsk);
    const problems = [
      ...textProblems(asked.words, ['words']),
      ...(await personProblems(write, record, asked.askedOf)),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const waiting = questions.find(({ kind, answer }) => kind === asked.kind && answer === null);
    if (waiting) return refused('frozen', words.askedAlready(await nameOf(write, waiting.askedOf)));
    const id = loanQuestionId.parse(newId('loanQuestion'));
    await write
      .insert(loanQuestions)
      .values({ ...asked, id, loanId: loan.id, askedBy: person.id, askedAt: now, answer: null });
    const changed = await changeLoan(write, {
      loan,
      action: 'ask-about-loan',
      person,
      now,
      detail: { questionId: id, ...asked },
    });
    if (asked.askedOf !== person.id)
      await tellPerson(write, {
        personId: asked.askedOf,
        kind: 'loanQuestionAsked',
        detail: { number: loan.number, question: asked.kind, words: asked.words, by: person.name },
        href: `/loans/${loan.id}#question`,
        now,
        newId,
      });
    return { ok: true, value: { id, ...changed } };
  });
}

/** Whether there is that to decide: it came late, or short, and nobody has said yes yet. */
function isOpen({ facts }: LoanRecord, kind: QuestionKind): boolean {
  if (facts.questions.some((one) => one.kind === kind && one.answer !== null)) return false;
  return kind === 'acceptLate' ? facts.late : facts.counting.in === 'done' && facts.shortOnArrival > 0;
}

const DECIDE: readonly string[] = ['theatreManager', 'decontaminationLead'];

/** Who decides: the theatre manager, the decontamination lead, or the surgeon who operates. */
async function personProblems(write: Queries, { booked }: LoanRecord, personId: string): Promise<Problem[]> {
  const [asked] = await write.select().from(people).where(eq(people.id, personId));
  const path = ['askedOf'];
  if (!asked || asked.leftAt !== null) return [{ path, code: 'unknown', message: words.noSuchPerson }];
  const operates = asked.role === 'surgeon' && (booked === null || booked.surgeonId === asked.id);
  return operates || DECIDE.includes(asked.role)
    ? []
    : [{ path, code: 'not-theirs', message: words.notAskable(asked.name) }];
}

async function nameOf(write: Queries, personId: string): Promise<string> {
  const [row] = await write.select({ name: people.name }).from(people).where(eq(people.id, personId));
  return row?.name ?? personId;
}

import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { loanAnswer } from '@/lib/loans/entries';
import { textProblems } from '@/lib/plans/checkConstruct';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { tellOfLoan } from './tell-of-loan';

interface AnswerLoan extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/** Enters what the lender said: that it comes, or that it does not. A lender may still say no after saying yes. */
export async function answerLoan(request: AnswerLoan): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  const parsed = loanAnswer.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const said = parsed.data;
  return atLoan(request, 'keepLoans', ['asked', 'confirmed'], async (write, record) => {
    const { loan } = record;
    const answered = { answeredBy: said.saidBy, answeredAt: now };
    if (said.answer === 'no') {
      const problems = textProblems(said.because, ['because']);
      if (problems.length > 0) return refusedFor(problems);
      const changed = await changeLoan(write, {
        loan,
        action: 'refuse-loan',
        person,
        now,
        to: 'refused',
        note: said.because,
        change: { ...answered, endedBecause: said.because },
        detail: { saidBy: said.saidBy },
      });
      await tellOfLoan(write, record, { news: 'refused', words: said.because, person, now, newId });
      return { ok: true, value: changed };
    }
    const { saidBy, expectedAt, backBy } = said;
    const changed = await changeLoan(write, {
      loan,
      action: 'confirm-loan',
      person,
      now,
      // what was confirmed already only gets its new times
      ...(loan.state === 'asked' ? { to: 'confirmed' as const } : {}),
      change: { ...answered, expectedAt, backBy },
      detail: { saidBy, expectedAt, backBy },
    });
    await tellOfLoan(write, record, { news: 'confirmed', person, now, newId });
    return { ok: true, value: changed };
  });
}

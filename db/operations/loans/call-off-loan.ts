import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { tellOfLoan } from './tell-of-loan';

interface CallOffLoan extends AtLoan {
  because: string;
}

const MOST_CHARACTERS = 400;

/** Calls a loan off that has not arrived, with the reason. What has arrived is sent back instead. */
export async function callOffLoan(request: CallOffLoan): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  const because = request.because.trim();
  return atLoan(request, 'keepLoans', ['asked', 'confirmed'], async (write, record) => {
    const path = ['because'];
    const problems = textProblems(because, path);
    if (because === '') problems.push({ path, code: 'needed', message: words.needed });
    if (because.length > MOST_CHARACTERS)
      problems.push({ path, code: 'too-long', message: words.tooLong(MOST_CHARACTERS) });
    if (problems.length > 0) return refusedFor(problems);
    const changed = await changeLoan(write, {
      loan: record.loan,
      action: 'call-off-loan',
      person,
      now,
      to: 'calledOff',
      note: because,
      change: { endedBecause: because },
    });
    await tellOfLoan(write, record, { news: 'calledOff', words: because, person, now, newId });
    return { ok: true, value: changed };
  });
}

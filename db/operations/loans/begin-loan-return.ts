import { and, eq, gt, inArray } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Queries } from '../../client';
import type { LoanRecord } from '../../queries/loans/facts';
import { cases, setPromises, sets } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { tellOfLoan } from './tell-of-loan';

interface BeginLoanReturn extends AtLoan {
  because: string;
}

const MOST_CHARACTERS = 400;

/** Begins the return of a loan, with the reason. No case still to come may count on one of its trays. */
export async function beginLoanReturn(
  request: BeginLoanReturn,
): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  const because = request.because.trim();
  return atLoan(request, 'keepLoans', ['here', 'inService'], async (write, record) => {
    const path = ['because'];
    const problems = textProblems(because, path);
    if (because === '') problems.push({ path, code: 'needed', message: words.needed });
    if (because.length > MOST_CHARACTERS)
      problems.push({ path, code: 'too-long', message: words.tooLong(MOST_CHARACTERS) });
    if (problems.length > 0) return refusedFor(problems);
    const promised = await promisedTo(write, record, now);
    if (promised) return refused('frozen', words.promisedTo(promised.code, promised.reference));
    const changed = await changeLoan(write, {
      loan: record.loan,
      action: 'begin-loan-return',
      person,
      now,
      to: 'goingBack',
      note: because,
    });
    await tellOfLoan(write, record, { news: 'goingBack', words: because, person, now, newId });
    return { ok: true, value: changed };
  });
}

async function promisedTo(write: Queries, { trays }: LoanRecord, now: string) {
  const ids = trays.flatMap(({ set }) => (set ? [set.id] : []));
  if (ids.length === 0) return null;
  const [row] = await write
    .select({ code: sets.code, reference: cases.reference })
    .from(setPromises)
    .innerJoin(cases, eq(cases.id, setPromises.caseId))
    .innerJoin(sets, eq(sets.id, setPromises.setId))
    .where(and(inArray(setPromises.setId, ids), gt(cases.endsAt, now)))
    .limit(1);
  return row ?? null;
}

import { and, eq, inArray } from 'drizzle-orm';
import type { LoanClaimId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { claimAnswer } from '@/lib/loans/entries';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { loanClaims } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface SettleClaim extends AtLoan {
  claimId: LoanClaimId;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/** Enters what came of a claim: agreed, disputed, or withdrawn by us, who said so and what. A disputed one stays open. */
export async function settleClaim(request: SettleClaim): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, claimId } = request;
  const parsed = claimAnswer.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { state, saidBy, words: said } = parsed.data;
  return atLoan(
    request,
    'keepLoans',
    ['here', 'inService', 'goingBack', 'goneBack'],
    async (write, { loan, claims }) => {
      const claim = claims.find(({ id }) => id === claimId);
      if (!claim) return refused('notFound', words.noSuchClaim);
      if (claim.state !== 'open' && claim.state !== 'disputed') return refused('frozen', words.claimOver);
      const problems = [...textProblems(saidBy, ['saidBy']), ...textProblems(said, ['words'])];
      if (problems.length > 0) return refusedFor(problems);
      await write
        .update(loanClaims)
        .set({ state, saidBy, saidWords: said, settledBy: person.id, settledAt: now })
        .where(and(eq(loanClaims.id, claimId), inArray(loanClaims.state, ['open', 'disputed'])));
      const changed = await changeLoan(write, {
        loan,
        action: 'settle-loan-claim',
        person,
        now,
        detail: { claimId, from: claim.state, to: state, saidBy, words: said },
      });
      return { ok: true, value: changed };
    },
  );
}

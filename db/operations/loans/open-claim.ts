import { type LoanClaimId, loanClaimId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { loanClaimEntry } from '@/lib/loans/entries';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { lastThere } from '../../queries/loans/lastThere';
import { loanClaims } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface OpenClaim extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/** Puts to the lender what the counts show missing or damaged, with the step at which it was last there. */
export async function openClaim(
  request: OpenClaim,
): Promise<Outcome<{ id: LoanClaimId; revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  const parsed = loanClaimEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { lineId, stage, kind, words: said } = parsed.data;
  return atLoan(
    request,
    'keepLoans',
    ['here', 'inService', 'goingBack', 'goneBack'],
    async (write, record) => {
      const { loan, claims, unclaimed } = record;
      const same = (one: { lineId: string; stage: string; kind: string }) =>
        one.lineId === lineId && one.stage === stage && one.kind === kind;
      if (claims.some(same)) return refused('frozen', words.claimedAlready);
      const found = unclaimed.find(same);
      if (!found) return refused('frozen', words.noSuchDiscrepancy);
      const problems = textProblems(said, ['words']);
      if (problems.length > 0) return refusedFor(problems);
      const id = loanClaimId.parse(newId('loanClaim'));
      const there = await lastThere(write, record, found);
      await write.insert(loanClaims).values({
        id,
        loanId: loan.id,
        lineId,
        stage,
        kind,
        quantity: found.quantity,
        lastThere: there,
        words: said,
        openedBy: person.id,
        openedAt: now,
        state: 'open',
      });
      const changed = await changeLoan(write, {
        loan,
        action: 'open-loan-claim',
        person,
        now,
        detail: {
          claimId: id,
          lineId,
          stage,
          kind,
          quantity: found.quantity,
          lastThere: { ...there },
          words: said,
        },
      });
      return { ok: true, value: { id, ...changed } };
    },
  );
}

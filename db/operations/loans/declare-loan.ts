import { type Outcome, refused } from '@/lib/identity/refusal';
import type { OurDeclaration } from '@/lib/loans/declaration';
import { nextStep } from '@/lib/loans/nextStep';
import { type Attestation, attests } from '@/lib/people/attestation';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface DeclareLoan extends AtLoan {
  /** That this person proved who they are and said `iDeclareThisLoan`. */
  attestation: Attestation;
}

/** Our decontamination declaration of a loan, by somebody of the bench who proves it. */
export async function declareLoan(request: DeclareLoan): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, attestation } = request;
  return atLoan(request, 'declareLoan', ['goingBack'], async (write, record) => {
    const { loan, facts, trays } = record;
    if (!attests(attestation, person.id, 'iDeclareThisLoan', now))
      return refused('notPermitted', words.proveFirst);
    const next = nextStep(facts);
    if (next.do !== 'declare') return refused('frozen', words.notYet(loan.number, next));
    const declared: OurDeclaration = {
      by: person.id,
      name: person.name,
      at: now,
      method: attestation.method,
      trays: trays.map(({ row, touched }) => ({
        tray: row.tray,
        how: touched ? 'decontaminated' : 'asItCame',
      })),
    };
    const { meaning, method, at } = attestation;
    const changed = await changeLoan(write, {
      loan,
      action: 'declare-loan',
      person,
      now,
      change: { ourDeclaration: declared },
      detail: { trays: declared.trays, attested: { meaning, method, at } },
    });
    return { ok: true, value: changed };
  });
}

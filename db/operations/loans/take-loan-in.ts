import { type Outcome, refused } from '@/lib/identity/refusal';
import { nextStep, papersMissing } from '@/lib/loans/nextStep';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { tellOfLoan } from './tell-of-loan';

/**
 * Ends the unpacking: weighed, counted, its papers looked for, what had to be decided decided. From here on its trays take
 * the ordinary turn, washing first. Those whose papers are missing stay held; nothing here lifts a hold.
 */
export async function takeLoanIn(request: AtLoan): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  return atLoan(request, 'keepLoans', ['here'], async (write, record) => {
    const { loan, facts } = record;
    const next = nextStep(facts);
    if (next.do !== 'takeIn') return refused('frozen', words.notYet(loan.number, next));
    const changed = await changeLoan(write, {
      loan,
      action: 'take-loan-in',
      person,
      now,
      to: 'inService',
      change: { unpackedAt: now },
      detail: {
        trays: record.trays.map(({ row }) => ({ tray: row.tray, tag: row.tag, grams: row.gramsIn })),
        heldForPapers: papersMissing(facts),
      },
    });
    if (!papersMissing(facts)) await tellOfLoan(write, record, { news: 'unpacked', person, now, newId });
    return { ok: true, value: changed };
  });
}

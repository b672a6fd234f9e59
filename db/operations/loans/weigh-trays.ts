import { and, eq } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { loanWeights } from '@/lib/loans/entries';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { loanTrays } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface WeighTrays extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/** Enters what the trays weigh, as they came or as they go, in grams. Weighing again takes the place of the figure before. */
export async function weighTrays(request: WeighTrays): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now } = request;
  const parsed = loanWeights.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { stage, grams } = parsed.data;
  return atLoan(
    request,
    'countLoan',
    stage === 'in' ? ['here'] : ['goingBack'],
    async (write, { loan, trays }) => {
      const known = new Set(trays.map(({ row }) => row.tray));
      const given = new Set(grams.map(({ tray }) => tray));
      if (given.size !== grams.length || grams.some(({ tray }) => !known.has(tray)))
        return refusedFor([{ path: ['grams'], code: 'trays', message: words.eachTrayOnce }]);
      for (const { tray, grams: weighed } of grams)
        await write
          .update(loanTrays)
          .set(
            stage === 'in'
              ? { gramsIn: weighed, weighedInBy: person.id, weighedInAt: now }
              : { gramsOut: weighed, weighedOutBy: person.id, weighedOutAt: now },
          )
          .where(and(eq(loanTrays.loanId, loan.id), eq(loanTrays.tray, tray)));
      const changed = await changeLoan(write, {
        loan,
        action: 'weigh-loan-trays',
        person,
        now,
        detail: { stage, grams },
      });
      return { ok: true, value: changed };
    },
  );
}

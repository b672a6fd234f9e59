import { inArray } from 'drizzle-orm';
import type { Outcome } from '@/lib/identity/refusal';
import { refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { loanPapers } from '@/lib/loans/entries';
import { papersMissing } from '@/lib/loans/nextStep';
import type { Queries } from '../../client';
import { heldReasons } from '../../queries/turns/heldReasons';
import { sets } from '../../schema';
import { holdInside } from '../turns/hold-set';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { missingPapers } from './loan-bar';
import { tellOfLoan } from './tell-of-loan';

interface RecordPapers extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * Enters whether the lender's decontamination declaration and written instructions are here. While one is missing, every
 * tray of the loan is held; that they came lifts nothing, for a person lifts a hold.
 */
export async function recordPapers(request: RecordPapers): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  const parsed = loanPapers.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const papers = parsed.data;
  return atLoan(request, 'keepLoans', ['here', 'inService'], async (write, record) => {
    const changed = await changeLoan(write, {
      loan: record.loan,
      action: 'record-loan-papers',
      person,
      now,
      change: { ...papers, papersBy: person.id, papersAt: now },
      detail: papers,
    });
    if (papersMissing(papers)) {
      const ids = record.trays.flatMap(({ set }) => (set && set.withdrawnAt === null ? [set.id] : []));
      await holdForPapers(write, ids, { ...request, papers });
      await tellOfLoan(write, record, { news: 'papersMissing', person, now, newId });
    }
    return { ok: true, value: changed };
  });
}

/** Holds trays whose papers are missing, but those that are held for that already. */
export async function holdForPapers(
  write: Queries,
  setIds: readonly string[],
  { person, now, newId, papers }: Pick<AtLoan, 'person' | 'now' | 'newId'> & { papers: Papers },
): Promise<void> {
  if (setIds.length === 0) return;
  for (const set of await write
    .select()
    .from(sets)
    .where(inArray(sets.id, [...setIds]))) {
    const reasons = await heldReasons(write, set.id);
    if (set.step === 'held' && reasons.some(({ because }) => because === 'loanWithoutDeclaration')) continue;
    const held = await holdInside(write, {
      set,
      because: 'loanWithoutDeclaration',
      note: `Not here: ${missingPapers(papers).join(', ')}.`,
      action: 'hold-set',
      person,
      now,
      newId,
    });
    if (!held.ok) throw new Error(`${set.code} can always be held`);
  }
}

interface Papers {
  declaration: string | null;
  instructions: string | null;
}

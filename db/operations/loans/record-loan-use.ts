import { eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { loanUseEntry } from '@/lib/loans/entries';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { LoanRecord } from '../../queries/loans/facts';
import { cases, loanUses } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface RecordLoanUse extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * Enters what of a loan went into a case and does not go back: implanted, or opened and not implanted. A figure entered
 * again takes the place of the one before, until the return is declared.
 */
export async function recordLoanUse(request: RecordLoanUse): Promise<Outcome<{ revision: number }, LoanNow>> {
  const { person, now } = request;
  const parsed = loanUseEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { caseId, uses } = parsed.data;
  return atLoan(request, 'countLoan', ['inService', 'goingBack'], async (write, record) => {
    const { loan, trays } = record;
    if (loan.ourDeclaration !== null) return refused('frozen', words.declaredAlready(loan.number));
    const [booked] = await write.select().from(cases).where(eq(cases.id, caseId));
    if (!booked || booked.startsAt > now)
      return refusedFor([{ path: ['caseId'], code: 'unknown', message: words.noSuchCase }]);
    if (!trays.some(({ used }) => used)) return refused('frozen', words.notUsedIn(booked.reference));
    const problems = quantityProblems(record, caseId, uses);
    if (problems.length > 0) return refusedFor(problems);
    for (const use of uses) {
      const figure = { quantity: use.quantity, recordedBy: person.id, recordedAt: now };
      await write
        .insert(loanUses)
        .values({ ...use, ...figure, caseId, loanId: loan.id })
        .onConflictDoUpdate({ target: [loanUses.lineId, loanUses.caseId, loanUses.outcome], set: figure });
    }
    const changed = await changeLoan(write, {
      loan,
      action: 'record-loan-use',
      person,
      now,
      detail: { caseId, caseReference: booked.reference, uses },
    });
    return { ok: true, value: changed };
  });
}

type Use = { lineId: string; outcome: string; quantity: number };

/** Only lines of this loan, each outcome once, and never more in all cases together than came. */
function quantityProblems(
  { lines, uses: before, counting }: LoanRecord,
  caseId: string,
  uses: readonly Use[],
): Problem[] {
  const problems: Problem[] = [];
  const key = (use: { lineId: string; outcome: string }) => `${use.lineId} ${use.outcome}`;
  const given = new Set(uses.map(key));
  if (given.size !== uses.length) problems.push({ path: ['uses'], code: 'twice', message: words.lineTwice });
  for (const lineId of new Set(uses.map((use) => use.lineId))) {
    const line = lines.find(({ id }) => id === lineId);
    const came = counting.in.figures.get(lineId);
    const path = ['uses', lineId];
    if (!line || !came) {
      problems.push({ path, code: 'unknown-line', message: words.lineUnknown });
      continue;
    }
    const elsewhere = before.filter(
      (use) => use.lineId === lineId && !(use.caseId === caseId && given.has(key(use))),
    );
    const all = [...elsewhere, ...uses.filter((use) => use.lineId === lineId)];
    const used = all.reduce((sum, { quantity }) => sum + quantity, 0);
    const most = came.sound + came.damaged;
    if (used > most)
      problems.push({ path, code: 'more-than-came', message: words.moreThanCame(line.name, most) });
  }
  return problems;
}

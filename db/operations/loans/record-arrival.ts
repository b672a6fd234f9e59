import { eq } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { lateMinutes } from '@/lib/loans/due';
import { loanArrival } from '@/lib/loans/entries';
import { textProblems } from '@/lib/plans/checkConstruct';
import { loanWords as words } from '@/lib/wording/loan-acts';
import type { Queries } from '../../client';
import { loanTrays, places } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';
import { tellOfLoan } from './tell-of-loan';

interface RecordArrival extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * Enters that a loan has arrived: when, how many trays, who brought it. When it was due is fixed here, with its rule, so
 * that neither a moved case nor a changed setting makes it late or punctual afterwards.
 */
export async function recordArrival(
  request: RecordArrival,
): Promise<Outcome<{ revision: number; lateMinutes: number | null }, LoanNow>> {
  const { person, now, newId } = request;
  const parsed = loanArrival.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { broughtBy, trays, placeId } = parsed.data;
  const arrivedAt = new Date(parsed.data.arrivedAt).toISOString();
  return atLoan(request, 'keepLoans', ['confirmed'], async (write, record) => {
    const { loan, lines, due } = record;
    const problems: Problem[] = textProblems(broughtBy, ['broughtBy']);
    if (arrivedAt > now) problems.push({ path: ['arrivedAt'], code: 'future', message: words.future });
    // a wall clock shows no seconds: what is asked for and comes in one minute is in order
    if (arrivedAt.slice(0, 16) < loan.askedAt.slice(0, 16))
      problems.push({ path: ['arrivedAt'], code: 'before-asked', message: words.beforeAsked });
    const listed = Math.max(0, ...lines.map(({ tray }) => tray));
    if (listed > 0 && listed !== trays)
      problems.push({ path: ['trays'], code: 'other-trays', message: words.otherTrays(listed, trays) });
    if (placeId !== null && !(await isInUse(write, placeId)))
      problems.push({ path: ['placeId'], code: 'unknown', message: words.noSuchPlace });
    if (problems.length > 0) return refusedFor(problems);
    await write
      .insert(loanTrays)
      .values(Array.from({ length: trays }, (_, at) => ({ loanId: loan.id, tray: at + 1 })));
    const late = lateMinutes(due.at, arrivedAt);
    const isLate = due.at !== null && arrivedAt > due.at;
    const changed = await changeLoan(write, {
      loan,
      action: 'record-loan-arrival',
      person,
      now,
      doneAt: arrivedAt,
      to: 'here',
      change: {
        arrivedAt,
        broughtBy,
        traysArrived: trays,
        placeId,
        dueAt: due.at,
        dueRule: due.terms,
      },
      detail: { arrivedAt, broughtBy, trays, dueAt: due.at, lateMinutes: late },
    });
    await tellOfLoan(write, record, { news: isLate ? 'arrivedLate' : 'arrived', person, now, newId });
    return { ok: true, value: { ...changed, lateMinutes: late } };
  });
}

async function isInUse(write: Queries, placeId: string): Promise<boolean> {
  const [place] = await write.select().from(places).where(eq(places.id, placeId));
  return place !== undefined && place.withdrawnAt === null;
}

import { type LoanCountId, loanCountId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import type { LoanCountPurpose, LoanStage } from '@/lib/loans/counting';
import { type LoanCountEntry, loanCountEntry } from '@/lib/loans/entries';
import { nextStep } from '@/lib/loans/nextStep';
import { loanWords as words } from '@/lib/wording/loan-acts';
import { sha256 } from '../../ledger';
import type { LoanRecord } from '../../queries/loans/facts';
import { loanCountLines, loanCounts } from '../../schema';
import { type AtLoan, atLoan, changeLoan, type LoanNow } from './at-loan';

interface CountLoan extends AtLoan {
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * One whole count of a loan against its list: the first, the blind check by another person, or counting again the lines
 * on which those differ; which of them is due now is for the record to say. All figures of all counts are kept.
 */
export async function countLoan(
  request: CountLoan,
): Promise<Outcome<{ id: LoanCountId; purpose: LoanCountPurpose; revision: number }, LoanNow>> {
  const { person, now, newId } = request;
  const parsed = loanCountEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { stage, figures } = parsed.data;
  const states = stage === 'in' ? (['here'] as const) : (['goingBack'] as const);
  return atLoan(request, 'countLoan', states, async (write, record) => {
    const { loan, lines, counting } = record;
    if (lines.length === 0) return refused('frozen', words.noList);
    const { next: purpose, disputed, firstBy } = counting[stage];
    if (purpose === 'done') return refused('frozen', words.nothingToCount('count'));
    const barred = notYet(record, stage);
    if (barred) return barred;
    if (purpose === 'check' && firstBy === person.id) return refused('frozen', words.checkByAnother);
    const wanted = new Set(purpose === 'settle' ? disputed : lines.map(({ id }) => id));
    const problems = figureProblems(figures, wanted);
    if (problems.length > 0) return refusedFor(problems);
    const id = loanCountId.parse(newId('loanCount'));
    await write
      .insert(loanCounts)
      .values({ id, loanId: loan.id, stage, purpose, personId: person.id, countedAt: now });
    await write.insert(loanCountLines).values(figures.map((one) => ({ ...one, countId: id })));
    const changed = await changeLoan(write, {
      loan,
      action: 'count-loan',
      person,
      now,
      // the figures stand in the count; here, where a second person may read before checking blind, only their digest
      detail: { countId: id, stage, purpose, lines: figures.length, digest: digestOf(figures) },
    });
    return { ok: true, value: { id, purpose, ...changed } };
  });
}

/** SHA-256 over the figures by line: the ledger shows a count that was changed past the program. */
function digestOf(figures: LoanCountEntry['figures']): string {
  const rows = figures.map(({ lineId, sound, damaged }) => `${lineId} ${sound} ${damaged}`);
  return sha256(rows.sort().join('\n'));
}

/** What goes back is counted once every tray is clean; before that, hands do not go into it. */
function notYet({ loan, facts, counting }: LoanRecord, stage: LoanStage) {
  if (stage === 'in') return null;
  const next = nextStep(facts);
  if (next.do === 'decontaminate') return refused('frozen', words.notYet(loan.number, next));
  return counting.in.next === 'done' ? null : refused('frozen', words.nothingToCount('count'));
}

/** Every line that is to be counted, once, and no other. */
function figureProblems(figures: LoanCountEntry['figures'], wanted: ReadonlySet<string>): Problem[] {
  const seen = new Set<string>();
  const problems: Problem[] = [];
  for (const { lineId } of figures) {
    const path = ['figures', lineId];
    if (!wanted.has(lineId)) problems.push({ path, code: 'unknown-line', message: words.lineUnknown });
    if (seen.has(lineId)) problems.push({ path, code: 'twice', message: words.lineTwice });
    seen.add(lineId);
  }
  for (const lineId of wanted)
    if (!seen.has(lineId))
      problems.push({ path: ['figures', lineId], code: 'not-counted', message: words.lineMissing });
  return problems;
}

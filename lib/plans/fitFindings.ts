import type { Finding } from '../fit/finding';
import type { Question, Verdict } from '../fit/question';
import type { FindingGroup, PlanFact } from './planFinding';

/** What a plan asks of the fit rules; the engine of `lib/fit` is one. */
export interface FitAnswers {
  ask(question: Question): Verdict;
}

/** A verdict's unmet and unanswered rules as plan findings. A verdict that fits without a caution gives none. */
export function factsOfVerdict(
  verdict: Verdict,
  about: string,
  onlyLengthsUm: number[] | null,
): (PlanFact & { group: FindingGroup })[] {
  const { relation, outcome } = verdict;
  const facts: (PlanFact & { group: FindingGroup })[] = [];
  for (const finding of verdict.findings) {
    if (finding.outranked || finding.answer === 'met') continue;
    facts.push({ code: 'fit', group: groupOf(finding), relation, about, onlyLengthsUm, finding });
  }
  // Unknown is never a fit: a verdict that is not established says so even where no rule gave the reason.
  if (outcome === 'notEstablished' && !facts.some(({ group }) => group === 'notEstablished')) {
    facts.push({ code: 'fit-not-established', group: 'notEstablished', relation, about, missing: [] });
  }
  return facts;
}

/** A note decides nothing, whether broken or not to be answered: it never counts among what must be looked at. */
function groupOf({ answer, from, severity }: Finding): FindingGroup {
  if (from.kind === 'noRule') return 'notEstablished';
  if (severity === 'note') return 'note';
  if (answer === 'missing') return 'notEstablished';
  return severity === 'stops' ? 'stop' : 'caution';
}

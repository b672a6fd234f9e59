import type { FindingView } from '@/app/_ui/finding';
import type { Verdict } from '@/lib/fit/question';
import { factWords, seenWords, sourceWords } from '@/lib/wording/fit';

/** A verdict's findings, ready to show: each with the values it looked at, its source and what is missing. */
export function findingViews({ relation, findings }: Verdict): FindingView[] {
  const exception = findings.find(({ from }) => from.kind === 'exception');
  return findings.map((finding) => ({
    outcome:
      finding.answer === 'met' ? 'fits' : finding.answer === 'notMet' ? 'doesNotFit' : 'notEstablished',
    severity: finding.severity,
    sentence: finding.sentence,
    source: finding.source ? sourceWords(finding.source) : null,
    missing: finding.missing.map((name) => factWords(relation, name)),
    exception: finding.outranked && exception ? `outranks this rule: ${exception.sentence}` : null,
    href:
      finding.from.kind === 'rule'
        ? `/fit/rules/${finding.from.code}`
        : finding.from.kind === 'exception'
          ? `/fit/exceptions/${finding.from.id}`
          : undefined,
  }));
}

/** The values the rules looked at, once each: term and value. */
export function valuesSeen({ relation, findings }: Verdict): { term: string; value: string | null }[] {
  const seen = new Map<string, string | null>();
  for (const { fact, value } of findings.flatMap((finding) => finding.seen)) {
    seen.set(factWords(relation, fact), value === null ? null : seenWords(relation, fact, value));
  }
  return [...seen].map(([term, value]) => ({ term: term.charAt(0).toUpperCase() + term.slice(1), value }));
}

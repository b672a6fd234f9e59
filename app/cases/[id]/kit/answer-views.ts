import type { FindingView } from '@/app/_ui/finding';
import type { LinkVerdict } from '@/lib/kits/need';
import { factWords, sourceWords } from '@/lib/wording/fit';
import type { KitNames } from './kit-names';

/**
 * An answer of the fit rules as findings to show.
 *
 * @param which `missing` what is not stated; `notMet` cautions and refusals; `refused` whatever keeps it from fitting
 */
export function answerViews(
  answer: LinkVerdict,
  names: KitNames,
  which: 'missing' | 'notMet' | 'refused',
): FindingView[] {
  const subject =
    answer.itemIds.map(names.item).join(' · ') + (answer.holeId ? ` · hole ${answer.holeId}` : '');
  return answer.verdict.findings
    .filter(({ answer: said, severity, outranked }) => {
      if (outranked) return false;
      if (which === 'missing') return said === 'missing';
      if (which === 'notMet') return said === 'notMet';
      return severity === 'stops' && said !== 'met';
    })
    .map((finding) => ({
      outcome:
        finding.answer === 'met' ? 'fits' : finding.answer === 'missing' ? 'notEstablished' : 'doesNotFit',
      severity: finding.severity,
      sentence: finding.sentence,
      subject,
      source: finding.source ? sourceWords(finding.source) : null,
      missing: finding.missing.map((fact) => factWords(answer.verdict.relation, fact)),
      exception: finding.from.kind === 'exception' ? finding.sentence : null,
    }));
}

import { type FindingOutcome, type FindingSeverity, outcomeWord } from '@/lib/wording/outcome-words';
import styles from './finding.module.css';
import { Status } from './status';
import type { Tone } from './tone';

/**
 * One answer of the fit rules or of the plan remarks, ready to show.
 *
 * `sentence` is the rule's own; `source` is where the rule comes from; `missing` names the values that would settle it;
 * `subject` says what it is about (a hole, a pair) when the list mixes several.
 */
export type FindingView = {
  id?: string;
  outcome: FindingOutcome;
  severity: FindingSeverity;
  sentence: string;
  subject?: string;
  source?: string | null;
  missing?: readonly string[];
  /** Set when a named exception for this pair of designs outranked the general rule. */
  exception?: string | null;
  href?: string;
};

/** How a finding stands, for `Status` and for counting. */
export function findingTone(finding: Pick<FindingView, 'outcome' | 'severity'>): Tone {
  switch (finding.outcome) {
    case 'fits':
      return 'good';
    case 'notEstablished':
      return 'unknown';
    case 'doesNotFit':
      return finding.severity === 'stops' ? 'stop' : finding.severity === 'caution' ? 'attention' : 'neutral';
  }
}

const order: Record<Tone, number> = { stop: 0, unknown: 1, attention: 2, neutral: 3, good: 4 };

/**
 * All findings at once: stops first, then what is not established, cautions, notes, and what fits.
 * Order among equals is as given.
 *
 * @param label names the list for screen readers
 * @param empty shown instead of an empty list
 */
export function FindingList({
  findings,
  label,
  empty = 'Nothing to report.',
}: {
  findings: readonly FindingView[];
  label: string;
  empty?: string;
}) {
  if (findings.length === 0) return <p className={styles.empty}>{empty}</p>;
  const sorted = findings
    .map((finding, index) => ({ finding, index, tone: findingTone(finding) }))
    .sort((a, b) => order[a.tone] - order[b.tone] || a.index - b.index);
  return (
    <ul aria-label={label} className={styles.list}>
      {sorted.map(({ finding, index }) => (
        <Finding key={finding.id ?? index} finding={finding} />
      ))}
    </ul>
  );
}

/** One finding, as a list item. */
export function Finding({ finding }: { finding: FindingView }) {
  return (
    <li className={styles.finding}>
      <div className={styles.word}>
        <Status tone={findingTone(finding)}>{outcomeWord(finding.outcome, finding.severity)}</Status>
      </div>
      <div className={styles.text}>
        <p>
          {finding.subject ? <strong className={styles.subject}>{finding.subject}: </strong> : null}
          {finding.href ? <a href={finding.href}>{finding.sentence}</a> : finding.sentence}
        </p>
        {finding.missing && finding.missing.length > 0 ? (
          <p className={styles.missing}>Missing: {finding.missing.join(', ')}.</p>
        ) : null}
        {finding.exception ? <p className={styles.source}>Named exception: {finding.exception}</p> : null}
        {finding.source ? <p className={styles.source}>Source: {finding.source}</p> : null}
      </div>
    </li>
  );
}

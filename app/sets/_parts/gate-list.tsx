import { Status } from '@/app/_ui/status';
import styles from './gate-list.module.css';

export interface GateLine {
  severity: 'stops' | 'caution' | 'note';
  sentence: string;
  /** The rule it follows from. */
  rule: string;
}

const TONES = { stops: 'stop', caution: 'attention', note: 'neutral' } as const;
const WORDS = { stops: 'Stops it', caution: 'Look twice', note: 'Note' } as const;
const ORDER = ['stops', 'caution', 'note'] as const;

/** What keeps a set from going on, and what to look at twice; the gravest first, each with its rule. */
export function GateList({
  lines,
  label,
  empty,
}: {
  lines: readonly GateLine[];
  label: string;
  empty: string;
}) {
  if (lines.length === 0) return <p>{empty}</p>;
  return (
    <ul className={styles.list} aria-label={label}>
      {[...lines]
        .sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity))
        .map(({ severity, sentence, rule }) => (
          <li key={sentence} className={styles.line}>
            <Status tone={TONES[severity]}>{WORDS[severity]}</Status>
            <div>
              <p>{sentence}</p>
              <p className={styles.rule}>{rule}</p>
            </div>
          </li>
        ))}
    </ul>
  );
}

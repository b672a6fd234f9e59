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

/** What keeps a set from going on, and what to look at twice; the gravest first, with the rule it follows from. */
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
  const ordered = [...lines].sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
  return (
    <ul className={styles.list} aria-label={label}>
      {ordered.map(({ severity, sentence, rule }, at) => (
        <li key={sentence} className={styles.line}>
          <Status tone={TONES[severity]}>{WORDS[severity]}</Status>
          <div>
            <p>{sentence}</p>
            {/* one rule stands once under all that follows from it */}
            {ordered[at + 1]?.rule === rule ? null : <p className={styles.rule}>{rule}</p>}
          </div>
        </li>
      ))}
    </ul>
  );
}

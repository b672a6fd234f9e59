import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { AcceptanceFinding } from '@/lib/loads/acceptance';
import { findingSentence } from '@/lib/wording/loads';
import styles from '../loads.module.css';

/** What is to be known before the load is decided, what stops it first. It informs; the decision is a person's. */
export function FindingsBefore({ findings }: { findings: readonly AcceptanceFinding[] }) {
  const order: Record<AcceptanceFinding['severity'], number> = { stops: 0, caution: 1, note: 2 };
  const sorted = findings
    .map((finding, at) => ({ finding, id: String(at) }))
    .sort((a, b) => order[a.finding.severity] - order[b.finding.severity]);
  return (
    <Section title="Before it is decided" note="for the person who decides; nothing is accepted by it">
      <ul aria-label="What is known of this load" className={styles.findings}>
        {sorted.map(({ finding, id }) => {
          const { tone, word } = standing(finding);
          return (
            <li key={id}>
              <span>
                <Status tone={tone}>{word}</Status>
              </span>
              <p>{findingSentence(finding)}</p>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

const OPEN: ReadonlySet<AcceptanceFinding['kind']> = new Set([
  'cycleNotEstablished',
  'indicatorPending',
  'notLookedAt',
  'implantsAwaitBiological',
  'implantsNotEstablished',
]);
const IN_ORDER: ReadonlySet<AcceptanceFinding['kind']> = new Set([
  'cycleKept',
  'indicatorPassed',
  'allSound',
]);

function standing({ kind, severity }: AcceptanceFinding): { tone: Tone; word: string } {
  if (IN_ORDER.has(kind)) return { tone: 'good', word: 'In order' };
  switch (severity) {
    case 'stops':
      return OPEN.has(kind) ? { tone: 'unknown', word: 'Stops: open' } : { tone: 'stop', word: 'Stops' };
    case 'caution':
      return { tone: 'attention', word: 'Caution' };
    case 'note':
      return { tone: 'neutral', word: 'Note' };
  }
}

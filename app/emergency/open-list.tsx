import Link from 'next/link';
import { Section } from '@/app/_ui/section';
import type { OpenEmergency } from '@/db/queries/emergency/record';
import { EMERGENCY_QUESTION_WORDS } from '@/lib/wording/emergency';
import { momentWords } from '@/lib/wording/sets';
import styles from './emergency.module.css';

/** Emergencies that left something open, for whoever comes after. */
export function OpenList({ open, now }: { open: readonly OpenEmergency[]; now: string }) {
  if (open.length === 0) return null;
  return (
    <Section title="Still open" note={String(open.length)}>
      <ul className={styles.facts}>
        {open.map(({ caseId, reference, recordedAt, open: questions }) => (
          <li key={caseId}>
            <Link href={`/emergency/${caseId}`}>{reference}</Link>, recorded {momentWords(recordedAt, now)}:{' '}
            {questions
              .map(({ kind, setCode }) => {
                const { question } = EMERGENCY_QUESTION_WORDS[kind];
                return setCode === null ? question : `${question}: ${setCode}`;
              })
              .join(' · ')}
          </li>
        ))}
      </ul>
    </Section>
  );
}

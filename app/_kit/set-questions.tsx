import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import type { TheatreQuestion } from '@/db/queries/theatreCounts/questions';
import { momentWords } from '@/lib/wording/sets';
import { openQuestionWords, questionWords } from '@/lib/wording/theatre-counts';
import styles from './kit.module.css';

/** Questions from counts in theatre that travel with a set until two people settle them. */
export function SetQuestions({ questions, now }: { questions: readonly TheatreQuestion[]; now: string }) {
  if (questions.length === 0) return null;
  return (
    <section className={styles.banner} aria-label="Open questions">
      <p>
        <Status tone="stop">{openQuestionWords(questions.length)}</Status>
      </p>
      <ul>
        {questions.map((question) => (
          <li key={question.id}>
            {`${questionWords(question)}. `}
            <Link href={`/cases/${question.caseId}/counts`}>{`Case ${question.reference}`}</Link>
            {`, ${momentWords(question.openedAt, now)}.`}
          </li>
        ))}
      </ul>
      <p>It travels with the set until two people settle it.</p>
    </section>
  );
}

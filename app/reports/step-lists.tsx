import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import type { AskLine } from '@/lib/wording/day-asks';
import type { StepLine } from '@/lib/wording/day-steps';
import styles from './report.module.css';

/** What to do first: by when, what, and why, each with the way there. */
export function StepList({ steps, label }: { steps: StepLine[]; label: string }) {
  return (
    <ol className={styles.list} aria-label={label}>
      {steps.map((step) => (
        <li key={step.key}>
          <p className={styles.when}>{step.needBy}</p>
          <div className={styles.said}>
            <Link href={step.href}>{step.about}</Link>
            <Status tone={step.tone}>{step.word}</Status>
          </div>
          <div>
            <p>{step.sentence}</p>
            <p className={styles.soft}>
              {'For '}
              {step.cases.map(({ caseId, reference }, at) => (
                <span key={caseId}>
                  {at === 0 ? '' : ', '}
                  <Link href={`/cases/${caseId}`}>{reference}</Link>
                </span>
              ))}
            </p>
          </div>
        </li>
      ))}
    </ol>
  );
}

/** What must be asked for today. */
export function AskList({ lines, label }: { lines: AskLine[]; label: string }) {
  return (
    <ul className={styles.list} aria-label={label}>
      {lines.map((line) => (
        <li key={line.key}>
          <p>{line.word}</p>
          <Link href={line.href}>{line.about}</Link>
          <div>
            <p>{line.sentence}</p>
            <p className={styles.soft}>{`For ${line.references.join(', ')}`}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}

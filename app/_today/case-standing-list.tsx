import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import styles from './case-standing-list.module.css';
import type { TodayLine } from './today-lines';

/** A case as listed; without a tone, how it stands is still being worked out. */
type Line = TodayLine | (Omit<TodayLine, 'tone'> & { tone: null });

/** Cases in order of time, each with how it stands and why; the whole row leads to the next step. */
export function CaseStandingList({ lines, label }: { lines: Line[]; label: string }) {
  return (
    <ol className={styles.list} aria-label={label}>
      {lines.map((line) => (
        <li key={line.id} className={styles.row}>
          <p className={styles.when}>
            <span className={styles.time}>{line.time}</span>
            <span className={styles.theatre}>
              {line.day} · {line.theatre}
            </span>
          </p>
          <div className={styles.what}>
            <p className={styles.reference}>
              <Link href={line.href}>{line.reference}</Link>
            </p>
            <p className={styles.detail}>
              {line.what} · {line.surgeon}
            </p>
          </div>
          <div className={styles.standing}>
            {line.tone === null ? (
              <p className={styles.sentence}>working it out …</p>
            ) : (
              <>
                <Status tone={line.tone}>{line.word}</Status>
                <p className={styles.sentence}>{line.sentence}</p>
              </>
            )}
          </div>
        </li>
      ))}
    </ol>
  );
}

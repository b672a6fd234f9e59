import Link from 'next/link';
import type { ChangedDay } from '@/app/_server/changed-day';
import { EmptyState } from '@/app/_ui/empty-state';
import { Section } from '@/app/_ui/section';
import { dayChangesWords as words } from '@/lib/wording/day-changes';
import { MarkSeen } from './mark-seen';
import styles from './report.module.css';

/** What changed on a day since its reader last marked it as seen, and the button that marks it. */
export function ChangedSince({ changed: { look, lines, mark }, now }: { changed: ChangedDay; now: string }) {
  return (
    <Section
      id="changed"
      title={words.title}
      note={look === null ? undefined : words.since(look.view, look.shownAt, now)}
      actions={<MarkSeen mark={mark} />}
    >
      {lines.length === 0 ? (
        <EmptyState title={look === null ? words.never : words.nothing} />
      ) : (
        <ul className={styles.list} aria-label={words.title}>
          {lines.map((line) => (
            <li key={line.key}>
              <div>
                {line.caseId === null ? line.about : <Link href={`/cases/${line.caseId}`}>{line.about}</Link>}
                <p className={styles.soft}>{line.where}</p>
              </div>
              <strong>{line.word}</strong>
              <div>
                <p>{line.sentence}</p>
                <p className={styles.soft}>{line.by}</p>
              </div>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

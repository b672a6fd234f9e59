import type { FitHistoryEntry } from '@/db/queries/fitScreens';
import { momentWords } from '@/lib/wording/changes';
import { historySentence } from '@/lib/wording/fit-history';
import styles from '../fit.module.css';

/** What the ledger says, oldest first. */
export function HistoryList({ entries }: { entries: readonly FitHistoryEntry[] }) {
  if (entries.length === 0) return <p className={styles.small}>Nobody has changed it.</p>;
  return (
    <ol className={styles.rows}>
      {entries.map((entry) => (
        <li key={entry.seq}>
          <time dateTime={entry.doneAt} className={styles.small}>
            {momentWords(entry.doneAt)}
          </time>
          <span className={styles.grow}>
            {entry.person ?? 'Nobody'} {historySentence(entry.action, entry.detail)}
          </span>
        </li>
      ))}
    </ol>
  );
}

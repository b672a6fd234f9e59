import type { ItemHistoryEntry } from '@/db/queries/catalogueItem';
import styles from './detail.module.css';

const ACTIONS: Record<string, string> = {
  'add-item': 'Added',
  'edit-item': 'Edited',
  'withdraw-item': 'Withdrawn',
};

/** What was done to an item, from the ledger, newest first. */
export function HistoryList({ entries }: { entries: readonly ItemHistoryEntry[] }) {
  return (
    <ul className={styles.history}>
      {entries.map((entry) => (
        <li key={`${entry.at} ${entry.action}`}>
          <strong>{ACTIONS[entry.action] ?? entry.action}</strong>
          {entry.person ? ` by ${entry.person}` : ''}{' '}
          <span className={styles.note}>
            <time dateTime={entry.at}>{entry.at.slice(0, 16).replace('T', ' ')} UTC</time>
            {whatOf(entry.detail)}
          </span>
        </li>
      ))}
    </ul>
  );
}

function whatOf(detail: Record<string, unknown>): string {
  if (typeof detail.reason === 'string') return ` · “${detail.reason}”`;
  if (!Array.isArray(detail.changed)) return '';
  const fields = (detail.changed as { field?: string }[]).flatMap(({ field }) =>
    field ? [fieldWords(field)] : [],
  );
  return fields.length === 0 ? '' : ` · changed: ${fields.join(', ')}`;
}

/** `headWidthUm` as `head width`. */
function fieldWords(field: string): string {
  return field.replace(/(Um|Id|Pence|Grams)$/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

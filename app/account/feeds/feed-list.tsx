'use client';

import { useAct } from '@/app/_turns/use-act';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import styles from './feeds.module.css';

interface FeedLine {
  id: string;
  title: string;
  name: string;
  /** Whose it is, where it is not the reader's own. */
  owner: string | null;
  made: string;
  read: string | null;
}

/** Open addresses, each with when it was last read, and the way to end it. */
export function FeedList({ feeds, label }: { feeds: readonly FeedLine[]; label: string }) {
  const { act } = useAct();
  return (
    <ul className={styles.list} aria-label={label}>
      {feeds.map(({ id, title, name, owner, made, read }) => (
        <li key={id}>
          <div>
            <p>
              <strong>{name}</strong> · {title}
              {owner === null ? '' : `, of ${owner}`}
            </p>
            <p
              className={styles.soft}
            >{`Made ${made} · ${read === null ? 'never read' : `last read ${read}`}`}</p>
          </div>
          <ConfirmDialog
            title={`Revoke “${name}”?`}
            confirm="Revoke this address"
            danger
            trigger={{ label: 'Revoke' }}
            onConfirm={() => act(`/api/v1/feeds/${id}/revoke`, {}, 'The address leads nowhere now.')}
          >
            <p>
              Whoever reads it is told that it is over. It can’t be brought back; another can be made. What a
              calendar program has read before stays in it.
            </p>
          </ConfirmDialog>
        </li>
      ))}
    </ul>
  );
}

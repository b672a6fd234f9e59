'use client';

import { useAct } from '@/app/_turns/use-act';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Status } from '@/app/_ui/status';
import styles from './tokens.module.css';

interface TokenLine {
  id: string;
  name: string;
  whom: string;
  acts: readonly string[];
  issued: string;
  expires: string;
  used: string | null;
  state: string;
  word: string;
}

/** Tokens, each with when it was last used, and the way to end it. */
export function TokenList({ tokens, label }: { tokens: readonly TokenLine[]; label: string }) {
  const { act } = useAct();
  return (
    <ul className={styles.list} aria-label={label}>
      {tokens.map(({ id, name, whom, acts, issued, expires, used, state, word }) => (
        <li key={id}>
          <div>
            <p>
              <strong>{name}</strong>, acts as {whom}
            </p>
            <p>{acts.length === 0 ? 'Reads alone.' : `Reads, and: ${acts.join(', ').toLowerCase()}.`}</p>
            <p className={styles.soft}>
              {`Issued ${issued} · ${state === 'expired' ? 'expired' : 'expires'} ${expires} · ${used === null ? 'never used' : `last used ${used}`}`}
            </p>
          </div>
          {state === 'open' ? (
            <ConfirmDialog
              title={`Revoke “${name}”?`}
              confirm="Revoke this token"
              danger
              trigger={{ label: 'Revoke' }}
              onConfirm={() => act(`/api/v1/tokens/${id}/revoke`, {}, 'The token opens nothing now.')}
            >
              <p>The system that holds it is let in no more, from this moment. It can’t be brought back.</p>
            </ConfirmDialog>
          ) : (
            <Status tone="neutral">{word}</Status>
          )}
        </li>
      ))}
    </ul>
  );
}

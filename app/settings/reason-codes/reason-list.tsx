'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { Status } from '@/app/_ui/status';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { ReasonKind } from '@/lib/reasons/reason';
import styles from './reasons.module.css';

interface ReasonLine {
  id: string;
  code: string;
  words: string;
  inUse: boolean;
  revision: number;
}

/** Reasons of one kind in the order they are offered; whoever keeps them moves, retires and puts back. */
export function ReasonList({
  kind,
  label,
  reasons,
  mayKeep,
}: {
  kind: ReasonKind;
  label: string;
  reasons: readonly ReasonLine[];
  mayKeep: boolean;
}) {
  const router = useRouter();
  const [pending, setPending] = useState(false);
  const [refusal, setRefusal] = useState('');
  const seen = reasons.map(({ id }) => id);

  async function send(address: string, body: object) {
    if (pending) return;
    setPending(true);
    setRefusal('');
    try {
      const sent = await sendJson(address, body, 'PUT');
      if (!sent.ok) setRefusal(sent.problems[0]?.sentence ?? sent.sentence);
      router.refresh();
    } catch {
      setRefusal(NOT_REACHED);
    } finally {
      setPending(false);
    }
  }

  function up(at: number) {
    const ids = [...seen];
    const [moved] = ids.splice(at, 1);
    if (moved) ids.splice(at - 1, 0, moved);
    void send('/api/v1/settings/reason-codes', { kind, seen, ids });
  }

  return (
    <>
      {refusal ? <p role="alert">{refusal}</p> : null}
      <ol className={styles.list} aria-label={label}>
        {reasons.map(({ id, code, words, inUse, revision }, at) => (
          <li key={id} className={styles.line}>
            <span className={styles.code}>{code}</span>
            <span className={styles.words}>
              {words} {inUse ? null : <Status tone="neutral">Retired</Status>}
            </span>
            {mayKeep ? (
              <span className={styles.acts}>
                <Button
                  size="small"
                  kind="quiet"
                  pending={pending}
                  disabled={at === 0}
                  aria-label={`Move up: ${words}`}
                  onClick={() => up(at)}
                >
                  Move up
                </Button>
                <Button
                  size="small"
                  pending={pending}
                  aria-label={`${inUse ? 'Retire' : 'Put back'}: ${words}`}
                  onClick={() =>
                    send(`/api/v1/settings/reason-codes/${id}`, { inUse: !inUse, baseRevision: revision })
                  }
                >
                  {inUse ? 'Retire' : 'Put back'}
                </Button>
              </span>
            ) : null}
          </li>
        ))}
      </ol>
    </>
  );
}

'use client';

import { useState } from 'react';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { sendJson } from '@/app/sets/_parts/send-json';
import styles from './notices.module.css';

/** Which kinds of notice the reader is told of; each is kept as it is chosen. */
export function NoticeChoice({
  kinds,
  always,
}: {
  kinds: readonly { kind: string; words: string; off: boolean }[];
  always: string;
}) {
  const [off, setOff] = useState<ReadonlySet<string>>(
    new Set(kinds.filter((one) => one.off).map(({ kind }) => kind)),
  );
  const [said, setSaid] = useState<string | null>(null);

  async function choose(kind: string, told: boolean) {
    const before = off;
    const next = new Set(before);
    if (told) next.delete(kind);
    else next.add(kind);
    setOff(next);
    const answer = await sendJson('/api/v1/notices/kinds', { off: [...next] }, 'PUT').catch(() => null);
    if (answer?.ok) setSaid('Kept. It holds for what happens from now on.');
    else {
      setOff(before);
      setSaid(answer?.sentence ?? NOT_REACHED);
    }
  }
  return (
    <div className={styles.choice}>
      {kinds.map(({ kind, words }) => (
        <CheckboxField
          key={kind}
          name={`told-${kind}`}
          label={words}
          checked={!off.has(kind)}
          onChecked={(told) => void choose(kind, told)}
        />
      ))}
      <p>{always}</p>
      <p role="status">{said}</p>
    </div>
  );
}

'use client';

import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import styles from './kit.module.css';

/** What was not taken, in full and large: it stays until somebody has read it. */
export function RefusedEntries({
  refused,
  word,
  onRead,
}: {
  refused: readonly { id: string; sentence: string }[];
  word: string;
  onRead: (id: string) => void;
}) {
  return refused.map(({ id, sentence }) => (
    <div key={id} role="alert" className={styles.refused}>
      <p className={styles.refusedWord}>
        <Status tone="stop" look="strong">
          {word}
        </Status>
      </p>
      <p>{sentence}</p>
      <Button size="bench" onClick={() => onRead(id)}>
        I have read it
      </Button>
    </div>
  ));
}

'use client';

import type { PressedSet } from '@/app/_turns/next-step';
import styles from '@/app/_turns/turns.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';

/** Sets the set aside until it is decided. */
export function AskButton({ set }: { set: PressedSet }) {
  const { act, pending, refusal } = useAct();
  return (
    <div className={styles.next}>
      <Button
        kind="primary"
        pending={pending}
        onClick={() =>
          act(
            `/api/v1/sets/${set.id}/ask-decision`,
            { baseRevision: set.revision },
            `${set.code} waits for a decision.`,
          )
        }
      >
        Ask for a decision
      </Button>
      <div role="status" className={styles.refusal}>
        {refusal}
      </div>
    </div>
  );
}

/** Takes it back to the bench: to be refilled, or counted again. */
export function ReturnButton({ set }: { set: PressedSet }) {
  const { act, pending, refusal } = useAct();
  return (
    <div className={styles.next}>
      <Button
        pending={pending}
        onClick={() =>
          act(
            `/api/v1/sets/${set.id}/return-to-bench`,
            { baseRevision: set.revision },
            `${set.code} is on the bench again.`,
          )
        }
      >
        Take it back to the bench
      </Button>
      <div role="status" className={styles.refusal}>
        {refusal}
      </div>
    </div>
  );
}

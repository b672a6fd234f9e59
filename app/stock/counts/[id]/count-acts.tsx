'use client';

import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import type { CountScreen } from '@/db/queries/shelf/countScreen';
import styles from '../counts.module.css';

/** Takes over what is to be counted again, by somebody who has not counted it. */
export function CountAgain({ count }: { count: CountScreen }) {
  const { act, pending, refusal } = useAct();
  return (
    <div className={styles.form}>
      <p>
        {`${count.lines.length === 1 ? 'One heap is' : `${count.lines.length} heaps are`} to be counted again by a person who has not counted here. What was found is not shown to whoever may do that.`}
      </p>
      <div className={styles.acts}>
        <Button
          kind="primary"
          size="bench"
          pending={pending}
          onClick={() =>
            act(
              `/api/v1/stock-counts/${count.id}/acts`,
              { kind: 'countAgain', baseRevision: count.revision },
              `${count.place}: count it again.`,
            )
          }
        >
          I count it again
        </Button>
      </div>
      {refusal ? (
        <p role="alert" className={styles.refusal}>
          {refusal}
        </p>
      ) : null}
    </div>
  );
}

/** Gives a count up: nothing comes of it, and what was due stays due. */
export function GiveUp({ count }: { count: CountScreen }) {
  const { act } = useAct();
  return (
    <ConfirmDialog
      title="Give this count up?"
      confirm="Give it up"
      danger
      trigger={{ label: 'Give this count up', kind: 'quiet', size: 'bench' }}
      onConfirm={() =>
        act(
          `/api/v1/stock-counts/${count.id}/acts`,
          { kind: 'abandon', baseRevision: count.revision },
          `${count.place}: count given up.`,
        )
      }
    >
      <p>Its figures stay on record, nothing comes of them, and what was due stays due.</p>
    </ConfirmDialog>
  );
}

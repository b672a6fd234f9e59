'use client';

import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import styles from './at-risk.module.css';

/** Makes the promises of the plan as it stands; what people chose stays. */
export function GiveSetsButton() {
  const { act, pending, refusal } = useAct();
  return (
    <div className={styles.give}>
      <Button
        pending={pending}
        onClick={() =>
          act(
            '/api/v1/theatre-list/plan',
            {},
            'Sets are given to the cases to come; what people chose stays.',
          )
        }
      >
        Give sets to cases
      </Button>
      <span role="status" className={styles.refusal}>
        {refusal}
      </span>
    </div>
  );
}

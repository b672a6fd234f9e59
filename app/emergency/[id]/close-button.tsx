'use client';

import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import styles from '../emergency.module.css';

/** Closes an open question by whoever presses, by name. */
export function CloseButton({
  caseId,
  questionId,
  label,
}: {
  caseId: string;
  questionId: string;
  label: string;
}) {
  const { act, pending, refusal } = useAct();
  return (
    <div className={styles.going}>
      <Button
        size="bench"
        pending={pending}
        onClick={() => act(`/api/v1/emergency/${caseId}/close`, { questionId }, `${label}.`)}
      >
        {label}
      </Button>
      {refusal ? <p role="alert">{refusal}</p> : null}
    </div>
  );
}

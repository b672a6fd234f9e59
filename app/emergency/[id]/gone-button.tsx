'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import styles from '../emergency.module.css';
import { GoneTimes } from '../gone-times';

/** That a set has gone, and when: both times are kept. */
export function GoneButton({ caseId, setId, code }: { caseId: string; setId: string; code: string }) {
  const { act, pending, refusal } = useAct();
  const [choosing, setChoosing] = useState(false);
  async function went(goneAt: string) {
    const done = `${code} is recorded as gone.`;
    if ((await act(`/api/v1/emergency/${caseId}/gone`, { setId, goneAt }, done)) === undefined)
      setChoosing(false);
  }
  return (
    <div className={styles.going}>
      <Button
        size="bench"
        kind="primary"
        aria-expanded={choosing}
        pending={pending}
        onClick={() => setChoosing(!choosing)}
      >
        {`${code} has gone`}
      </Button>
      {choosing ? <GoneTimes label={`When ${code} went`} disabled={pending} onChoose={went} /> : null}
      {refusal ? <p role="alert">{refusal}</p> : null}
    </div>
  );
}

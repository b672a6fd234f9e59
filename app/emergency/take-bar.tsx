'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { sendJson } from '@/app/sets/_parts/send-json';
import { addressOf } from '@/lib/emergency/asked';
import { useAnswers } from './answers';
import styles from './emergency.module.css';
import { GoneTimes } from './gone-times';

const NOT_REACHED = 'That did not reach the server. Look at the theatre list before you press again.';

/** The confirming press, and that it has gone already. What was shown is sent along: something else is never taken. */
export function TakeBar({
  shown,
  codes,
  waits,
  goneWords,
  ready,
  missing,
}: {
  shown: string;
  /** `SFL-05 and GEN-01`. */
  codes: string;
  /** Some of it is not sterile yet: it is promised, and goes once it is. */
  waits: boolean;
  /** `02:10`, where it has gone already. */
  goneWords: string | null;
  /** All that must be answered is. */
  ready: boolean;
  /** What is still to be said. */
  missing: string | null;
}) {
  const router = useRouter();
  const { asked, pending: underWay, choose } = useAnswers();
  const [pending, setPending] = useState(false);
  const [choosing, setChoosing] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);

  async function take() {
    setPending(true);
    setRefusal(null);
    try {
      const query = addressOf(asked).split('?')[1] ?? '';
      const answers = Object.fromEntries(new URLSearchParams(query));
      const sent = await sendJson<{ caseId: string }>('/api/v1/emergency', { asked: answers, shown });
      if (sent.ok) {
        // back leads to the question before, not to a second taking
        router.replace(`/emergency/${sent.value.caseId}`);
        // what was looked at before shows what was taken
        router.refresh();
        return;
      }
      setRefusal(sent.sentence);
      router.refresh();
    } catch {
      setRefusal(NOT_REACHED);
    }
    setPending(false);
  }
  function went(gone: string) {
    setChoosing(false);
    choose({ gone });
  }
  return (
    <div className={styles.bar}>
      {refusal ? (
        <p role="alert" className={styles.refusal}>
          {refusal}
        </p>
      ) : null}
      {missing ? <p className={styles.barNote}>{missing}</p> : null}
      {choosing ? <GoneTimes label={`When ${codes} went`} onChoose={went} /> : null}
      <div className={styles.barKeys}>
        {goneWords === null ? (
          <Button size="bench" aria-expanded={choosing} onClick={() => setChoosing(!choosing)}>
            It has gone already
          </Button>
        ) : (
          <Button size="bench" onClick={() => choose({ gone: null })}>
            Not gone yet
          </Button>
        )}
        <Button
          size="bench"
          kind="primary"
          className={styles.barPrimary}
          pending={pending || underWay}
          disabled={!ready}
          onClick={take}
        >
          {goneWords === null
            ? `${waits ? 'Wait for' : 'Take'} ${codes}`
            : `Record: ${codes} gone ${goneWords}`}
        </Button>
      </div>
    </div>
  );
}

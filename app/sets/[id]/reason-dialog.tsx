'use client';

import { type ReactNode, useState } from 'react';
import type { PressedSet } from '@/app/_turns/next-step';
import styles from '@/app/_turns/turns.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { TextArea } from '@/app/_ui/text-area';

const ACTS = {
  reprocess: { trigger: 'Send round again', confirm: 'Send to washing', done: 'washing', danger: true },
  withdraw: {
    trigger: 'Take out of service',
    confirm: 'Take out of service',
    done: 'out of service',
    danger: true,
  },
  'bring-back': {
    trigger: 'Bring back into service',
    confirm: 'Bring back',
    done: 'back in service',
    danger: false,
  },
} as const;

/** An act on a set that needs no more than a reason. */
export function ReasonDialog({
  set,
  how,
  doneAt,
  children,
}: {
  set: PressedSet;
  how: keyof typeof ACTS;
  doneAt: string | null;
  children: ReactNode;
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const { trigger, confirm, done, danger } = ACTS[how];

  async function go() {
    setAsked(true);
    if (reason.trim() === '') return;
    const body = { baseRevision: set.revision, doneAt, reason };
    if ((await act(`/api/v1/sets/${set.id}/${how}`, body, `${set.code}: ${done}.`)) === undefined) {
      setOpen(false);
      setReason('');
      setAsked(false);
    }
  }

  return (
    <Dialog
      title={`${trigger}: ${set.code}`}
      trigger={{ label: trigger }}
      open={open}
      onOpen={(next) => {
        forget();
        setOpen(next);
      }}
      actions={
        <Button kind={danger ? 'danger' : 'primary'} size="bench" pending={pending} onClick={go}>
          {confirm}
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        {children}
        <TextArea
          name={`${how}-reason`}
          label="Why"
          required
          rows={2}
          maxLength={400}
          value={reason}
          onValue={setReason}
          problems={asked && reason.trim() === '' ? ['Say why, in a few words.'] : []}
        />
        {refusal ? (
          <p role="alert" className={styles.refusal}>
            {refusal}
          </p>
        ) : null}
      </div>
    </Dialog>
  );
}

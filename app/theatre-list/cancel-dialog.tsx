'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { TextArea } from '@/app/_ui/text-area';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import type { DayCaseLine } from './day-table';
import styles from './theatre-list.module.css';

/** Takes a case off the list with its reason, or puts it back. */
export function CancelDialog({ line }: { line: DayCaseLine }) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [because, setBecause] = useState('');
  const { id, reference, revision: baseRevision } = line;
  if (line.cancelled !== null)
    return (
      <>
        <Button
          size="small"
          pending={pending}
          onClick={() =>
            act(`/api/v1/cases/${id}/put-back`, { baseRevision }, `${reference} is on the list again.`)
          }
        >
          Put back on the list
          <VisuallyHidden>{reference}</VisuallyHidden>
        </Button>
        <span>{line.cancelled}</span>
        <span role="status">{refusal}</span>
      </>
    );
  function show(next: boolean) {
    setOpen(next);
    forget();
  }
  async function cancel() {
    const body = { baseRevision, because };
    if ((await act(`/api/v1/cases/${id}/cancel`, body, `${reference} is cancelled.`)) === undefined)
      setOpen(false);
  }
  return (
    <>
      <Button size="small" aria-haspopup="dialog" onClick={() => show(true)}>
        Cancel
        <VisuallyHidden>{reference}</VisuallyHidden>
      </Button>
      <Dialog
        title={`Cancel ${reference}`}
        open={open}
        onOpen={show}
        actions={
          <>
            <Button onClick={() => show(false)}>Keep the case</Button>
            <Button kind="danger" pending={pending} onClick={cancel}>
              Cancel the case
            </Button>
          </>
        }
      >
        <div className={styles.form}>
          <p>It stays on record. What is promised to it is free for other cases at once.</p>
          <TextArea
            name={`because-${id}`}
            label="Why"
            value={because}
            onValue={setBecause}
            maxLength={400}
            rows={3}
          />
          <PatientDataHint text={because} />
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </>
  );
}

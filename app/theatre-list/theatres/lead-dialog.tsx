'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { NumberField } from '@/app/_ui/number-field';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { TextArea } from '@/app/_ui/text-area';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import styles from '../theatre-list.module.css';
import type { LeadRow } from './lead-table';

/** Changes how long before a case its sets must stand in a theatre; empty goes back to the hospital's own. */
export function LeadDialog({
  row: { id, name, leadMinutes, revision },
  hospitalLead,
}: {
  row: LeadRow;
  hospitalLead: number;
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [minutes, setMinutes] = useState('');
  const [because, setBecause] = useState('');
  function show(next: boolean) {
    setOpen(next);
    forget();
    if (!next) return;
    setMinutes(leadMinutes === null ? '' : String(leadMinutes));
    setBecause('');
  }
  async function change() {
    const asked = minutes.trim() === '' ? null : Number(minutes);
    const body = { baseRevision: revision, leadMinutes: asked, because };
    const done = `In ${name} sets stand ${asked ?? hospitalLead} min before the case.`;
    if ((await act(`/api/v1/theatre-list/theatres/${id}/lead`, body, done)) === undefined) setOpen(false);
  }
  return (
    <>
      <Button size="small" aria-haspopup="dialog" onClick={() => show(true)}>
        Change
        <VisuallyHidden>{`the lead of ${name}`}</VisuallyHidden>
      </Button>
      <Dialog
        title={`How long before a case, ${name}`}
        open={open}
        onOpen={show}
        actions={
          <>
            <Button onClick={() => show(false)}>Go back</Button>
            <Button kind="primary" pending={pending} onClick={change}>
              Change it
            </Button>
          </>
        }
      >
        <div className={styles.form}>
          <NumberField
            name={`lead-${id}`}
            label="Sets stand in theatre before the case"
            unit="min"
            hint={`Empty: ${hospitalLead} min, as everywhere in the hospital`}
            value={minutes}
            onValue={setMinutes}
            whole
          />
          <TextArea
            name={`because-${id}`}
            label="Why"
            value={because}
            onValue={setBecause}
            maxLength={400}
            rows={3}
          />
          <PatientDataHint text={because} />
          <p>
            What is promised to cases to come is kept from then on; where that can’t be, nothing is changed.
          </p>
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </>
  );
}

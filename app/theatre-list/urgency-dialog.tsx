'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { Segmented } from '@/app/_ui/radio-group';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import { URGENCY_ORDER, type Urgency } from '@/lib/theatre/surgicalCase';
import { URGENCY_WORDS } from '@/lib/wording/plans';
import styles from './theatre-list.module.css';

interface UrgencyDialogProps {
  one: { id: string; reference: string; revision: number; urgency: Urgency };
  size?: 'small' | 'regular';
}

/** Makes a case more or less urgent: who goes first where there are too few sets. */
export function UrgencyDialog({ one, size = 'small' }: UrgencyDialogProps) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [chosen, setChosen] = useState<Urgency>(one.urgency);
  const { id, reference, revision: baseRevision } = one;
  function show(next: boolean) {
    setOpen(next);
    forget();
    if (next) setChosen(one.urgency);
  }
  async function change() {
    const done = `${reference} is now ${URGENCY_WORDS[chosen].toLowerCase()}.`;
    if ((await act(`/api/v1/cases/${id}/urgency`, { baseRevision, urgency: chosen }, done)) === undefined)
      setOpen(false);
  }
  return (
    <>
      <Button size={size} aria-haspopup="dialog" onClick={() => show(true)}>
        Urgency
        <VisuallyHidden>{`of ${reference}`}</VisuallyHidden>
      </Button>
      <Dialog
        title={`Urgency of ${reference}`}
        open={open}
        onOpen={show}
        actions={
          <>
            <Button onClick={() => show(false)}>Go back</Button>
            <Button kind="primary" pending={pending} disabled={chosen === one.urgency} onClick={change}>
              Change the urgency
            </Button>
          </>
        }
      >
        <div className={styles.form}>
          <Segmented
            name={`urgency-${id}`}
            label="How urgent"
            choices={URGENCY_ORDER.map((value) => ({ value, label: URGENCY_WORDS[value] }))}
            value={chosen}
            onValue={setChosen}
          />
          <p>
            Where sets are short, the more urgent case goes first. What people promised stays; what planning
            gave is planned anew.
          </p>
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </>
  );
}

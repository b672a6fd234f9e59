'use client';

import { useState } from 'react';
import type { PressedSet } from '@/app/_turns/next-step';
import styles from '@/app/_turns/turns.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { TextArea } from '@/app/_ui/text-area';
import { type HeldBecause, heldBecause } from '@/lib/sets/setState';
import { capitalised } from '@/lib/wording/numbers';
import { HELD_BECAUSE_WORDS } from '@/lib/wording/sets';

/** Holds a set, with the reason and what was seen. Nothing is chosen beforehand. */
export function HoldDialog({
  set,
  doneAt,
  again,
}: {
  set: PressedSet;
  doneAt: string | null;
  again: boolean;
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [because, setBecause] = useState<HeldBecause | null>(null);
  const [note, setNote] = useState('');
  const [asked, setAsked] = useState(false);

  async function hold() {
    setAsked(true);
    if (because === null || note.trim() === '') return;
    const body = { baseRevision: set.revision, doneAt, because, note };
    const done = `${set.code}: held, because ${HELD_BECAUSE_WORDS[because]}.`;
    if ((await act(`/api/v1/sets/${set.id}/hold`, body, done)) === undefined) {
      setOpen(false);
      setBecause(null);
      setNote('');
      setAsked(false);
    }
  }

  return (
    <Dialog
      title={again ? `One more reason to hold ${set.code}` : `Hold ${set.code}`}
      trigger={{ label: again ? 'Hold for another reason too' : 'Hold' }}
      open={open}
      onOpen={(next) => {
        forget();
        setOpen(next);
      }}
      actions={
        <Button kind="danger" size="bench" pending={pending} onClick={hold}>
          {again ? 'Add the reason' : `Hold ${set.code}`}
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        <RadioGroup<HeldBecause>
          name="hold-because"
          label="Because"
          required
          choices={heldBecause.options.map((value) => ({
            value,
            label: capitalised(HELD_BECAUSE_WORDS[value]),
          }))}
          value={because}
          onValue={setBecause}
          problems={asked && because === null ? ['Choose why it is held.'] : []}
        />
        <TextArea
          name="hold-note"
          label="What was seen"
          required
          rows={2}
          maxLength={400}
          value={note}
          onValue={setNote}
          problems={asked && note.trim() === '' ? ['Say what was seen, in a few words.'] : []}
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

'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { TextArea } from '@/app/_ui/text-area';
import type { IssuedThing } from '@/db/queries/caseLife/backScreen';

/** Something issued that nobody can find: said with what was done to find it. */
export function NotFoundDialog({
  thing,
  onClose,
  onSay,
}: {
  thing: IssuedThing | null;
  onClose: () => void;
  onSay: (note: string) => Promise<string | undefined>;
}) {
  const [note, setNote] = useState('');
  const [wrong, setWrong] = useState<string | null>(null);
  const [pending, setPending] = useState(false);
  async function say() {
    if (note.trim() === '') return setWrong('Say what was done to find it.');
    setPending(true);
    const refusal = await onSay(note.trim());
    setPending(false);
    if (refusal !== undefined) return setWrong(refusal);
    setNote('');
    setWrong(null);
    onClose();
  }
  return (
    <Dialog
      title={`Not found: ${thing?.name ?? ''}`}
      open={thing !== null}
      onOpen={(open) => {
        if (open) return;
        setWrong(null);
        onClose();
      }}
      actions={
        <Button kind="danger" size="bench" pending={pending} onClick={say}>
          It is not found
        </Button>
      }
    >
      <div className={kitStyles.form} data-size="bench">
        <TextArea
          name="not-found-note"
          label="What was done to find it"
          required
          rows={2}
          maxLength={400}
          value={note}
          onValue={setNote}
        />
        <PatientDataHint text={note} />
        {wrong ? <p role="alert">{wrong}</p> : null}
      </div>
    </Dialog>
  );
}

'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { TextArea } from '@/app/_ui/text-area';
import { usageWords } from '@/lib/wording/usage';

/** Asks once why a closed record is corrected; every entry made until it is put down again carries that reason. */
export function CorrectRecord({
  because,
  onBecause,
}: {
  because: string | null;
  onBecause: (because: string | null) => void;
}) {
  const [open, setOpen] = useState(false);
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState(false);
  if (because !== null)
    return (
      <section className={kitStyles.banner} aria-label="Correcting">
        <p>{`You correct a closed record: “${because}”. Take back what is wrong, then enter what is right.`}</p>
        <Button size="bench" onClick={() => onBecause(null)}>
          Correcting is done
        </Button>
      </section>
    );
  return (
    <>
      <div className={kitStyles.acts}>
        <Button size="bench" onClick={() => setOpen(true)}>
          Correct the record…
        </Button>
      </div>
      <Dialog
        title="Correct the record"
        open={open}
        onOpen={setOpen}
        actions={
          <Button
            kind="primary"
            size="bench"
            onClick={() => {
              if (text.trim() === '') return setWrong(true);
              onBecause(text.trim());
              setText('');
              setWrong(false);
              setOpen(false);
            }}
          >
            Begin correcting
          </Button>
        }
      >
        <div className={kitStyles.form} data-size="bench">
          <p>
            Nothing is overwritten: what was entered stays, and each correction stands beside it with its
            reason.
          </p>
          <TextArea
            name="because"
            label="Why it is corrected"
            required
            rows={2}
            maxLength={400}
            value={text}
            onValue={setText}
          />
          <PatientDataHint text={text} />
          {wrong ? <p role="alert">{usageWords.becauseNeeded}</p> : null}
        </div>
      </Dialog>
    </>
  );
}

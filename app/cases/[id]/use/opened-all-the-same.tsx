'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { Status } from '@/app/_ui/status';
import { TextArea } from '@/app/_ui/text-area';
import type { OpeningBar } from '@/lib/usage/act';
import { listWords } from '@/lib/wording/numbers';
import { OPENING_BAR_WORDS, usageWords } from '@/lib/wording/usage';

/** A thing that is not to be opened. It may be put aside; where it was opened all the same, that is recorded with how. */
export function OpenedAllTheSame({
  barred,
  onClose,
  onOpened,
}: {
  barred: { name: string; bars: OpeningBar[] } | null;
  onClose: () => void;
  onOpened: (note: string) => void;
}) {
  const [note, setNote] = useState('');
  const [wrong, setWrong] = useState(false);
  function leave() {
    setNote('');
    setWrong(false);
    onClose();
  }
  return (
    <Dialog
      role="alertdialog"
      title={`Do not open: ${barred?.name ?? ''}`}
      open={barred !== null}
      onOpen={(open) => !open && leave()}
      actions={
        <>
          <Button size="bench" kind="primary" onClick={leave}>
            Put it aside, unopened
          </Button>
          <Button
            size="bench"
            kind="danger"
            onClick={() => {
              if (note.trim() === '') return setWrong(true);
              onOpened(note.trim());
              leave();
            }}
          >
            It was opened all the same
          </Button>
        </>
      }
    >
      <div className={kitStyles.form} data-size="bench">
        <p>
          <Status tone="stop" look="strong">
            {`It is ${listWords((barred?.bars ?? []).map((bar) => OPENING_BAR_WORDS[bar]))}`}
          </Status>
        </p>
        <p>Ask for another. If it was opened already, say how: what happened is recorded.</p>
        <TextArea
          name="opened-note"
          label="How it came to be opened"
          rows={2}
          maxLength={400}
          value={note}
          onValue={setNote}
        />
        <PatientDataHint text={note} />
        {wrong ? <p role="alert">{usageWords.needsNote}</p> : null}
      </div>
    </Dialog>
  );
}

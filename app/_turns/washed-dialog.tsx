'use client';

import { useState } from 'react';
import { Button } from '../_ui/button';
import { ButtonRow } from '../_ui/button-row';
import { Dialog } from '../_ui/dialog';
import { TextArea } from '../_ui/text-area';
import { VisuallyHidden } from '../_ui/visually-hidden';
import type { PressedSet } from './next-step';
import styles from './turns.module.css';
import { useAct } from './use-act';

/** What was seen when a set came out of washing: nothing is said for the washer, and dirty holds the set. */
export function WashedDialog({
  set,
  doneAt,
  kind,
}: {
  set: PressedSet;
  doneAt: string | null;
  kind: 'primary' | 'plain';
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [note, setNote] = useState('');

  async function say(seen: 'clean' | 'dirty') {
    const done =
      seen === 'clean' ? `${set.code}: on bench.` : `${set.code}: held, because it was dirty after wash.`;
    const body = { baseRevision: set.revision, doneAt, seen, note: seen === 'dirty' ? note : null };
    if ((await act(`/api/v1/sets/${set.id}/end-wash`, body, done)) === undefined) setOpen(false);
  }

  return (
    <>
      <Button kind={kind} aria-haspopup="dialog" onClick={() => setOpen(true)}>
        Take out of washing
        <VisuallyHidden>{set.code}</VisuallyHidden>
      </Button>
      <Dialog
        title={`${set.code} comes out of washing`}
        open={open}
        onOpen={(next) => {
          forget();
          setOpen(next);
        }}
      >
        <div className={styles.form} data-size="bench">
          <p>Look at every piece in good light, bores and joints too. What was seen?</p>
          <ButtonRow>
            <Button kind="primary" size="bench" pending={pending} onClick={() => say('clean')}>
              Clean: to the bench
            </Button>
            <Button kind="danger" size="bench" pending={pending} onClick={() => say('dirty')}>
              Dirty: hold it
            </Button>
          </ButtonRow>
          <TextArea
            name="washed-note"
            label="Where it was dirty"
            hint="Goes on record with the hold; leave it empty where it is clean."
            rows={2}
            value={note}
            onValue={setNote}
          />
          {refusal ? (
            <p role="alert" className={styles.refusal}>
              {refusal}
            </p>
          ) : null}
        </div>
      </Dialog>
    </>
  );
}

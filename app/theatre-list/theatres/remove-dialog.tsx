'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { Dialog } from '@/app/_ui/dialog';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import styles from '../theatre-list.module.css';
import type { SessionLine } from './session-table';

/** Takes a session out, or it and those like it in later weeks. */
export function RemoveDialog({ row: { id, theatre, day, times, revision } }: { row: SessionLine }) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [andLater, setAndLater] = useState(false);
  function show(next: boolean) {
    setOpen(next);
    forget();
    setAndLater(false);
  }
  async function remove() {
    const done = ({ removed }: { removed: number }) =>
      removed === 1 ? `${theatre} has no session then.` : `${removed} sessions of ${theatre} are taken out.`;
    const body = { baseRevision: revision, andLater };
    const address = `/api/v1/theatre-list/sessions/${id}/remove`;
    if ((await act<{ removed: number }>(address, body, done)) === undefined) setOpen(false);
  }
  return (
    <>
      <Button size="small" aria-haspopup="dialog" onClick={() => show(true)}>
        Take out
        <VisuallyHidden>{`the session of ${theatre} on ${day}`}</VisuallyHidden>
      </Button>
      <Dialog
        title={`Take out ${theatre}, ${day}`}
        open={open}
        onOpen={show}
        actions={
          <>
            <Button onClick={() => show(false)}>Keep it</Button>
            <Button kind="danger" pending={pending} onClick={remove}>
              Take it out
            </Button>
          </>
        }
      >
        <div className={styles.form}>
          <p>{`${times}. Cases in it stay on the list, out of hours.`}</p>
          <CheckboxField
            name={`later-${id}`}
            label="Those of later weeks too"
            hint="Same theatre, weekday, times and surgeon"
            checked={andLater}
            onChecked={setAndLater}
          />
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </>
  );
}

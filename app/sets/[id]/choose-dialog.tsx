'use client';

import { type ReactNode, useState } from 'react';
import type { PressedSet } from '@/app/_turns/next-step';
import styles from '@/app/_turns/turns.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { ComboField } from '@/app/_ui/combo-field';
import { Dialog } from '@/app/_ui/dialog';
import { useCaseChoices } from './use-case-choices';

const ACTS = {
  send: { title: 'Send to theatre', label: 'For case', member: 'caseId', done: 'in theatre' },
  move: { title: 'Move', label: 'It lies in', member: 'placeId', done: 'moved' },
} as const;

/** An act on a set that needs one thing chosen: the case it goes to, or the place it lies in. */
export function ChooseDialog({
  set,
  how,
  choices,
  chosen = null,
  doneAt,
  primary = false,
  children,
}: {
  set: PressedSet;
  how: keyof typeof ACTS;
  /** Places, or the cases the set is promised to: all others come as the choice is opened. */
  choices: readonly { value: string; label: string; note?: string }[];
  /** Shown as chosen: the case the set is promised to. */
  chosen?: string | null;
  doneAt: string | null;
  primary?: boolean;
  children?: ReactNode;
}) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [value, setValue] = useState<string | null>(chosen);
  const [asked, setAsked] = useState(false);
  const { title, label, member, done } = ACTS[how];
  const cases = useCaseChoices(open && how === 'send');
  const coming = how === 'send' && cases === null;

  async function go() {
    setAsked(true);
    if (value === null) return;
    const body = { baseRevision: set.revision, doneAt, [member]: value };
    if ((await act(`/api/v1/sets/${set.id}/${how}`, body, `${set.code}: ${done}.`)) === undefined)
      setOpen(false);
  }

  return (
    <Dialog
      title={`${title}: ${set.code}`}
      trigger={{ label: title, kind: primary ? 'primary' : 'plain' }}
      open={open}
      onOpen={(next) => {
        forget();
        setOpen(next);
      }}
      actions={
        <Button kind="primary" size="bench" pending={pending} onClick={go}>
          {title}
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        {children}
        <ComboField
          name={`${how}-to`}
          label={label}
          required
          options={cases ?? choices}
          empty={coming ? 'Looking for the cases …' : undefined}
          value={value}
          onValue={setValue}
          problems={asked && value === null ? ['Choose one.'] : []}
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

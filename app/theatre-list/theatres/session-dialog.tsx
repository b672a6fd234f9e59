'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { FieldGrid } from '@/app/_ui/field-grid';
import { NumberField } from '@/app/_ui/number-field';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import styles from '../theatre-list.module.css';
import type { SessionChoices, SessionLine } from './session-table';

interface SessionDialogProps {
  choices: SessionChoices;
  /** The day it begins with. */
  from: string;
  /** The session to change; left out where one is entered. */
  row?: SessionLine;
}

/** Enters when a theatre works, on one day or week after week; or changes one session. */
export function SessionDialog({ choices, from, row }: SessionDialogProps) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [form, setForm] = useState(() => formOf(choices, from, row));
  const key = row?.id ?? 'new';
  const field = (name: keyof typeof form) => ({
    name: `${name}-${key}`,
    value: form[name],
    onValue: (value: string) => setForm((before) => ({ ...before, [name]: value })),
  });
  function show(next: boolean) {
    setOpen(next);
    forget();
    if (next) setForm(formOf(choices, from, row));
  }
  async function send() {
    const times = { date: form.date, from: form.begins, until: form.ends, surgeonId: form.surgeonId || null };
    const refused = row
      ? await act(
          `/api/v1/theatre-list/sessions/${row.id}`,
          { ...times, baseRevision: row.revision },
          'The session is changed.',
        )
      : await act<{ ids: string[] }>(
          '/api/v1/theatre-list/sessions',
          { ...times, theatreId: form.theatreId, weeks: Number(form.weeks) },
          ({ ids }) => (ids.length === 1 ? 'The session is entered.' : `${ids.length} sessions are entered.`),
        );
    if (refused === undefined) setOpen(false);
  }
  return (
    <>
      <Button
        size={row ? 'small' : 'regular'}
        kind={row ? 'plain' : 'primary'}
        aria-haspopup="dialog"
        onClick={() => show(true)}
      >
        {row ? 'Change' : 'Enter sessions'}
        {row ? <VisuallyHidden>{`the session of ${row.theatre} on ${row.day}`}</VisuallyHidden> : null}
      </Button>
      <Dialog
        title={row ? `Session of ${row.theatre}` : 'Enter sessions'}
        open={open}
        onOpen={show}
        actions={
          <>
            <Button onClick={() => show(false)}>Go back</Button>
            <Button kind="primary" pending={pending} onClick={send}>
              {row ? 'Change the session' : 'Enter'}
            </Button>
          </>
        }
      >
        <div className={styles.form}>
          <FieldGrid min="narrow">
            {row ? null : <SelectField {...field('theatreId')} label="Theatre" options={choices.theatres} />}
            <TextField {...field('date')} label="Day" hint="YYYY-MM-DD" width="medium" />
            <TextField {...field('begins')} label="From" hint="HH:MM" width="number" />
            <TextField {...field('ends')} label="Until" hint="HH:MM" width="number" />
            {row ? null : (
              <NumberField {...field('weeks')} label="For so many weeks" hint="1: this day alone" whole />
            )}
            <SelectField
              {...field('surgeonId')}
              label="Surgeon"
              blank="Anybody’s"
              options={choices.surgeons}
            />
          </FieldGrid>
          <p>
            Times are those of the clock on the wall, in every week. One that ends no later than it begins
            ends the next day. Where the clocks go back, a time that comes twice begins a session with the
            first and ends it with the second.
          </p>
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </>
  );
}

const formOf = ({ theatres }: SessionChoices, date: string, row: SessionLine | undefined) => ({
  theatreId: row?.theatreId ?? theatres[0]?.value ?? '',
  date,
  begins: row?.from ?? '08:00',
  ends: row?.until ?? '18:00',
  weeks: '1',
  surgeonId: row?.surgeonId ?? '',
});

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
import { theatreListWords } from '@/lib/wording/theatre-list';
import type { Choice, DayCaseLine } from './day-table';
import { HardTime } from './hard-time';
import styles from './theatre-list.module.css';

interface Moved {
  lost: { setCode: string }[];
}

/** Moves a case to another time or theatre. Its sets go along where they can; which cannot is said. */
export function MoveDialog({ line, theatres }: { line: DayCaseLine; theatres: Choice[] }) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [form, setForm] = useState(slotOf(line));
  const field = (name: Exclude<keyof typeof form, 'which'>) => ({
    name: `${name}-${line.id}`,
    value: form[name],
    onValue: (value: string) => setForm((before) => ({ ...before, [name]: value })),
  });
  function show(next: boolean) {
    setOpen(next);
    forget();
    if (next) setForm(slotOf(line));
  }
  async function move() {
    const body = { ...form, minutes: Number(form.minutes), baseRevision: line.revision };
    const done = ({ lost }: Moved) =>
      lost.length === 0
        ? `${line.reference} is moved.`
        : `${line.reference} is moved. ${theatreListWords.lost(
            line.reference,
            lost.map(({ setCode }) => setCode),
          )}`;
    if ((await act<Moved>(`/api/v1/cases/${line.id}/move`, body, done)) === undefined) setOpen(false);
  }
  return (
    <>
      <Button size="small" aria-haspopup="dialog" onClick={() => show(true)}>
        Move
        <VisuallyHidden>{line.reference}</VisuallyHidden>
      </Button>
      <Dialog
        title={`Move ${line.reference}`}
        open={open}
        onOpen={show}
        actions={
          <>
            <Button onClick={() => show(false)}>Go back</Button>
            <Button kind="primary" pending={pending} onClick={move}>
              Move the case
            </Button>
          </>
        }
      >
        <div className={styles.form}>
          <FieldGrid min="narrow">
            <TextField {...field('date')} label="Day" hint="YYYY-MM-DD" width="medium" />
            <TextField {...field('time')} label="Begins" hint="HH:MM" width="number" />
            <NumberField {...field('minutes')} label="Takes" unit="min" whole />
            <SelectField {...field('theatreId')} label="Theatre" options={theatres} />
          </FieldGrid>
          <HardTime
            name={`which-${line.id}`}
            date={form.date}
            time={form.time}
            which={form.which}
            onWhich={(which) => setForm((before) => ({ ...before, which }))}
          />
          <p>Sets promised to it go along where they can be back in time; which can’t is told.</p>
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </>
  );
}

const slotOf = ({ date, time, which, minutes, theatreId }: DayCaseLine) => ({
  date,
  time,
  which,
  minutes: String(minutes),
  theatreId,
});

'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { NumberField } from '@/app/_ui/number-field';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import { offered } from '@/lib/reasons/reason';
import { actFaults, delayStep, useAct } from '@/lib/usage/act';
import { ACT_FAULT_WORDS, DELAY_STEP_WORDS } from '@/lib/wording/usage';
import { ReasonKeys } from './reason-keys';
import type { Table } from './use-table';

const EMPTY = { minutes: '', step: '', about: '', note: '' };
const NO_MINUTES = 'Whole minutes from 1 to 1440, or none.';

/** Records a delay. Nothing of it has to be known but that there was one, and something about it. */
export function DelayDialog({
  record,
  table,
  because,
}: {
  record: RecordOfUse;
  table: Table;
  because: string | null;
}) {
  const [open, setOpen] = useState(false);
  const [form, setForm] = useState(EMPTY);
  const [reasonId, setReasonId] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const set = (name: keyof typeof EMPTY) => (value: string) => setForm((now) => ({ ...now, [name]: value }));
  const reasons = offered(record.reasons, 'delay');
  const wrongMinutes =
    form.minutes !== '' && !/^(?:[1-9]\d{0,2}|1[0-3]\d\d|14[0-3]\d|1440)$/.test(form.minutes);

  function leave(next: boolean) {
    setForm(EMPTY);
    setReasonId(null);
    setProblem(null);
    setOpen(next);
  }

  function recordIt() {
    if (wrongMinutes) return setProblem(NO_MINUTES);
    const [kind, id] = form.about.split(' ');
    const parsed = useAct.safeParse({
      kind: 'delay',
      minutes: form.minutes === '' ? null : Number(form.minutes),
      reasonId,
      step: form.step === '' ? null : form.step,
      about: kind === 'set' ? { kind, setId: id } : kind === 'item' ? { kind, itemId: id } : null,
      note: form.note.trim() === '' ? null : form.note.trim(),
      because,
    });
    if (!parsed.success) return setProblem(parsed.error.issues[0]?.message ?? '');
    const [fault] = actFaults(parsed.data);
    if (fault) return setProblem(ACT_FAULT_WORDS[fault]);
    if (table.send(parsed.data) === null)
      return setProblem('Nobody is signed in: sign in, and enter it again.');
    leave(false);
  }

  return (
    <Dialog
      title="A delay"
      trigger={{ label: 'Record a delay' }}
      open={open}
      onOpen={leave}
      actions={
        <Button kind="primary" size="bench" onClick={recordIt}>
          Record the delay
        </Button>
      }
    >
      <div className={kitStyles.form} data-size="bench">
        <NumberField
          name="delay-minutes"
          label="Minutes lost"
          hint="Leave it empty where nobody knows."
          whole
          min={1}
          max={1440}
          value={form.minutes}
          onValue={set('minutes')}
          problems={problem === NO_MINUTES ? [NO_MINUTES] : []}
        />
        {reasons.length === 0 ? (
          <p>The hospital has no reasons for delay yet: say it in words.</p>
        ) : (
          <ReasonKeys legend="Why" reasons={reasons} chosen={reasonId} onName={setReasonId} />
        )}
        <SelectField
          name="delay-step"
          label="When"
          blank="Not stated"
          options={delayStep.options.map((value) => ({ value, label: DELAY_STEP_WORDS[value] }))}
          value={form.step}
          onValue={set('step')}
        />
        <SelectField
          name="delay-about"
          label="About which set or piece"
          blank="None, or not stated"
          options={aboutOptions(record)}
          value={form.about}
          onValue={set('about')}
        />
        <TextArea
          name="delay-note"
          label="What happened"
          rows={2}
          maxLength={400}
          value={form.note}
          onValue={set('note')}
        />
        <PatientDataHint text={form.note} />
        {problem !== null && problem !== NO_MINUTES ? <p role="alert">{problem}</p> : null}
      </div>
    </Dialog>
  );
}

/** Sets that came, then every item that was there or was planned to be. */
const aboutOptions = ({ sets, items }: RecordOfUse) => [
  ...sets.map(({ id, code }) => ({ value: `set ${id}`, label: code })),
  ...[...items]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map(({ itemId, name }) => ({ value: `item ${itemId}`, label: name })),
];

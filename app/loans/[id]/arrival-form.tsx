'use client';

import { useState } from 'react';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';
import { instantOfMoment, type Moment, MomentFields } from './moment-fields';

/** That it has arrived: when, how many trays, who brought it, and where it stands. */
export function ArrivalForm({
  loan,
  now,
  places,
  onDone,
}: {
  loan: SeenLoan;
  now: Moment;
  places: { id: string; name: string }[];
  onDone?: () => void;
}) {
  const { send, pending, problems } = useLoanAct(loan, onDone);
  const [arrived, setArrived] = useState(now);
  const [trays, setTrays] = useState('');
  const [broughtBy, setBroughtBy] = useState('');
  const [placeId, setPlaceId] = useState('');
  const [own, setOwn] = useState<SentProblem[]>([]);

  function submit() {
    const arrivedAt = instantOfMoment(arrived);
    if (arrivedAt === null)
      return setOwn([
        { path: 'arrivedAt', sentence: 'That is no date and time: write them as 2026-01-31 and 08:30.' },
      ]);
    setOwn([]);
    const counted = trays.trim() === '' ? null : Number(trays);
    const entry = { arrivedAt, broughtBy, trays: counted, placeId: placeId || null };
    return send({ act: 'arrive', entry }, 'its arrival is on record');
  }
  const all = [...own, ...problems];
  return (
    <ActForm confirm="It has arrived" pending={pending} problems={all} onSend={submit}>
      <FieldGrid>
        <MomentFields name="arrivedAt" label="Arrived" value={arrived} onValue={setArrived} problems={all} />
        <NumberField
          name="trays"
          label="Trays that came"
          whole
          value={trays}
          onValue={setTrays}
          problems={problemsAt(all, 'trays')}
        />
        <TextField
          name="broughtBy"
          label="Brought by"
          value={broughtBy}
          onValue={setBroughtBy}
          problems={problemsAt(all, 'broughtBy')}
        />
        <SelectField
          name="placeId"
          label="Stands in"
          blank="Not stated"
          options={places.map(({ id, name }) => ({ value: id, label: name }))}
          value={placeId}
          onValue={setPlaceId}
          problems={problemsAt(all, 'placeId')}
        />
      </FieldGrid>
    </ActForm>
  );
}

'use client';

import { useState } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { TextArea } from '@/app/_ui/text-area';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

/** An act that needs a reason: calling a loan off, or beginning its return. */
export function ReasonDialog({
  loan,
  act,
  label,
  about,
  primary = false,
}: {
  loan: SeenLoan;
  act: 'callOff' | 'beginReturn';
  label: string;
  /** What it means, in a sentence. */
  about: string;
  primary?: boolean;
}) {
  return (
    <Dialog
      title={`${label}: ${loan.number}`}
      trigger={{ label, ...(primary ? { kind: 'primary' as const, size: 'bench' as const } : {}) }}
    >
      {(close) => (
        <>
          <p>{about}</p>
          <ReasonForm loan={loan} act={act} label={label} onDone={close} />
        </>
      )}
    </Dialog>
  );
}

function ReasonForm({
  loan,
  act,
  label,
  onDone,
}: {
  loan: SeenLoan;
  act: 'callOff' | 'beginReturn';
  label: string;
  onDone: () => void;
}) {
  const { send, pending, problems } = useLoanAct(loan, onDone);
  const [because, setBecause] = useState('');
  const done = act === 'callOff' ? 'called off' : 'it is to go back';
  return (
    <ActForm
      confirm={label}
      pending={pending}
      problems={problems}
      onSend={() => send({ act, because }, done)}
    >
      <TextArea
        name="because"
        label="Why"
        rows={3}
        maxLength={400}
        value={because}
        onValue={setBecause}
        problems={problemsAt(problems, 'because')}
      />
    </ActForm>
  );
}

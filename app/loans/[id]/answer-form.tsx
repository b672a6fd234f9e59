'use client';

import { useState } from 'react';
import { FieldGrid, FieldGridRow } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { Segmented } from '@/app/_ui/radio-group';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';
import { instantOfMoment, MomentFields } from './moment-fields';

const WRONG_MOMENT = {
  path: 'expectedAt',
  sentence: 'That is no date and time: write them as 2026-01-31 and 08:30.',
};

/** What the lender says: that it comes, and when; or that it does not, and why. */
export function AnswerForm({
  loan,
  contact,
  onDone,
}: {
  loan: SeenLoan;
  contact: string | null;
  onDone?: () => void;
}) {
  const { send, pending, problems } = useLoanAct(loan, onDone);
  const [answer, setAnswer] = useState<'yes' | 'no' | undefined>(undefined);
  const [saidBy, setSaidBy] = useState(contact ?? '');
  const [expected, setExpected] = useState({ date: '', time: '' });
  const [backBy, setBackBy] = useState('');
  const [because, setBecause] = useState('');
  const [own, setOwn] = useState<(typeof WRONG_MOMENT)[]>([]);

  function submit() {
    if (answer === undefined) return setOwn([{ path: 'answer', sentence: 'Say what the lender answered.' }]);
    if (answer === 'no') {
      setOwn([]);
      return send({ act: 'answer', entry: { answer, saidBy, because } }, 'the lender’s refusal is on record');
    }
    const none = expected.date.trim() === '' && expected.time.trim() === '';
    const expectedAt = none ? null : instantOfMoment(expected);
    if (!none && expectedAt === null) return setOwn([WRONG_MOMENT]);
    setOwn([]);
    const entry = { answer, saidBy, expectedAt, backBy: backBy.trim() || null };
    return send({ act: 'answer', entry }, 'it is to come');
  }
  const all = [...own, ...problems];
  return (
    <ActForm confirm="Enter the answer" pending={pending} problems={all} onSend={submit}>
      <Segmented
        name="answer"
        label="The lender says"
        value={answer}
        onValue={setAnswer}
        choices={[
          { value: 'yes', label: 'It comes' },
          { value: 'no', label: 'It cannot be lent' },
        ]}
        problems={problemsAt(all, 'answer')}
      />
      <FieldGrid>
        <TextField
          name="saidBy"
          label="Who said so"
          value={saidBy}
          onValue={setSaidBy}
          problems={problemsAt(all, 'saidBy')}
        />
        {answer === 'yes' ? (
          <>
            <MomentFields
              name="expectedAt"
              label="It is to arrive"
              value={expected}
              onValue={setExpected}
              problems={all}
            />
            <TextField
              name="backBy"
              label="Back with the lender by"
              hint="As 2026-01-31; empty where they did not say"
              width="code"
              value={backBy}
              onValue={setBackBy}
              problems={problemsAt(all, 'backBy')}
            />
          </>
        ) : null}
        {answer === 'no' ? (
          <FieldGridRow>
            <TextArea
              name="because"
              label="Why"
              rows={2}
              value={because}
              onValue={setBecause}
              problems={problemsAt(all, 'because')}
            />
          </FieldGridRow>
        ) : null}
      </FieldGrid>
    </ActForm>
  );
}

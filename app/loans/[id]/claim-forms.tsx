'use client';

import { useState } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import { CLAIM_STATE_WORDS } from '@/lib/wording/loans';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

/** One thing the counts show not as it should be. */
export interface OpenDiscrepancy {
  lineId: string;
  stage: 'in' | 'out';
  kind: 'notFound' | 'damaged';
  /** `2 × screw 3.5, not found as it goes back`. */
  what: string;
}

/** Puts one discrepancy to the lender. */
export function ClaimDialog({ loan, found }: { loan: SeenLoan; found: OpenDiscrepancy }) {
  return (
    <Dialog title="Put it to the lender" trigger={{ label: 'Put it to the lender', size: 'small' }}>
      {(close) => (
        <>
          <p>{found.what}</p>
          <ClaimForm loan={loan} found={found} onDone={close} />
        </>
      )}
    </Dialog>
  );
}

function ClaimForm({ loan, found, onDone }: { loan: SeenLoan; found: OpenDiscrepancy; onDone: () => void }) {
  const { send, pending, problems } = useLoanAct(loan, onDone);
  const [words, setWords] = useState('');
  const { lineId, stage, kind } = found;
  return (
    <ActForm
      confirm="Open the claim"
      pending={pending}
      problems={problems}
      onSend={() => send({ act: 'claim', entry: { lineId, stage, kind, words } }, 'the claim is open')}
    >
      <TextArea
        name="words"
        label="What you tell them"
        rows={3}
        maxLength={400}
        value={words}
        onValue={setWords}
        problems={problemsAt(problems, 'words')}
      />
    </ActForm>
  );
}

/** Enters what came of a claim. */
export function SettleDialog({ loan, claim }: { loan: SeenLoan; claim: { id: string; what: string } }) {
  return (
    <Dialog title="What came of it" trigger={{ label: 'Enter what came of it', size: 'small' }}>
      {(close) => (
        <>
          <p>{claim.what}</p>
          <SettleForm loan={loan} claimId={claim.id} onDone={close} />
        </>
      )}
    </Dialog>
  );
}

const OUTCOMES = (['agreed', 'disputed', 'withdrawn'] as const).map((value) => ({
  value,
  label: CLAIM_STATE_WORDS[value],
}));

function SettleForm({ loan, claimId, onDone }: { loan: SeenLoan; claimId: string; onDone: () => void }) {
  const { send, pending, problems } = useLoanAct(loan, onDone);
  const [state, setState] = useState('');
  const [saidBy, setSaidBy] = useState('');
  const [words, setWords] = useState('');
  const [own, setOwn] = useState<SentProblem[]>([]);

  function submit() {
    if (state === '') return setOwn([{ path: 'state', sentence: 'Choose what came of it.' }]);
    setOwn([]);
    return send({ act: 'settle', claimId, entry: { state, saidBy, words } }, 'the outcome is on record');
  }
  const all = [...own, ...problems];
  return (
    <ActForm confirm="Enter the outcome" pending={pending} problems={all} onSend={submit}>
      <SelectField
        name="state"
        label="Outcome"
        blank="Choose"
        options={OUTCOMES}
        value={state}
        onValue={setState}
        problems={problemsAt(all, 'state')}
      />
      <TextField
        name="saidBy"
        label="Who says so"
        value={saidBy}
        onValue={setSaidBy}
        problems={problemsAt(all, 'saidBy')}
      />
      <TextArea
        name="words"
        label="What they say"
        rows={2}
        maxLength={400}
        value={words}
        onValue={setWords}
        problems={problemsAt(all, 'words')}
      />
    </ActForm>
  );
}

'use client';

import { useState } from 'react';
import { ComboField } from '@/app/_ui/combo-field';
import { Dialog } from '@/app/_ui/dialog';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { SelectField } from '@/app/_ui/select-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import { USE_OUTCOME_WORDS } from '@/lib/wording/loans';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

interface Offered {
  loan: SeenLoan;
  lines: { value: string; label: string }[];
  cases: { value: string; label: string }[];
  caseId: string;
}

/** What of a loan went into a case and does not go back, line by line. */
export function UseDialog(offered: Offered) {
  return (
    <Dialog title={`Used of ${offered.loan.number}`} width="wide" trigger={{ label: 'Enter what was used' }}>
      <UseForm {...offered} />
    </Dialog>
  );
}

function UseForm({ loan, lines, cases, caseId: meant }: Offered) {
  const { send, pending, problems } = useLoanAct(loan);
  const [caseId, setCaseId] = useState(meant);
  const [lineId, setLineId] = useState<string | null>(null);
  const [outcome, setOutcome] = useState<string>('implanted');
  const [quantity, setQuantity] = useState('');
  const [own, setOwn] = useState<SentProblem[]>([]);

  async function submit() {
    const wrong: SentProblem[] = [];
    if (caseId === '') wrong.push({ path: 'caseId', sentence: 'Choose the case.' });
    if (lineId === null) wrong.push({ path: 'lineId', sentence: 'Choose what was used.' });
    if (!/^\d{1,3}$/.test(quantity.trim()))
      wrong.push({ path: 'quantity', sentence: 'How many? A whole number.' });
    setOwn(wrong);
    if (wrong.length > 0) return;
    const entry = { caseId, uses: [{ lineId, outcome, quantity: Number(quantity) }] };
    if ((await send({ act: 'use', entry }, 'the use is on record')) !== null) setQuantity('');
  }
  const all = [...own, ...problems];
  return (
    <ActForm confirm="Enter the use" pending={pending} problems={all} onSend={submit}>
      <p>A figure entered again for the same line, case and outcome takes the place of the one before.</p>
      <FieldGrid>
        <SelectField
          name="caseId"
          label="Case"
          blank="Choose"
          options={cases}
          value={caseId}
          onValue={setCaseId}
          problems={problemsAt(all, 'caseId')}
        />
        <ComboField
          name="lineId"
          label="What"
          options={lines}
          value={lineId}
          onValue={setLineId}
          problems={problemsAt(all, 'lineId')}
        />
        <SelectField
          name="outcome"
          label="What became of it"
          options={Object.entries(USE_OUTCOME_WORDS).map(([value, label]) => ({ value, label }))}
          value={outcome}
          onValue={setOutcome}
        />
        <NumberField
          name="quantity"
          label="How many"
          whole
          value={quantity}
          onValue={setQuantity}
          problems={problemsAt(all, 'quantity')}
        />
      </FieldGrid>
    </ActForm>
  );
}

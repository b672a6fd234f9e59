'use client';

import { useState } from 'react';
import { problemsAt } from '@/app/_ui/field-problem';
import { Segmented } from '@/app/_ui/radio-group';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

type Paper = 'present' | 'missing';
const CHOICES = [
  { value: 'present' as const, label: 'here' },
  { value: 'missing' as const, label: 'not here' },
];
const PAPERS = [
  ['declaration', 'The lender’s decontamination declaration'],
  ['instructions', 'The makers’ written instructions'],
] as const;

/** Whether the lender’s papers are here. Nobody’s looking is assumed: both are said. */
export function PapersForm({ loan, onDone }: { loan: SeenLoan; onDone?: () => void }) {
  const { send, pending, problems } = useLoanAct(loan, onDone);
  const [papers, setPapers] = useState<{ declaration?: Paper; instructions?: Paper }>({});
  const [own, setOwn] = useState<SentProblem[]>([]);

  function submit() {
    const unsaid = PAPERS.filter(([paper]) => papers[paper] === undefined);
    setOwn(unsaid.map(([paper]) => ({ path: paper, sentence: 'Look for it, and say whether it is here.' })));
    if (unsaid.length > 0) return;
    const missing = papers.declaration === 'missing' || papers.instructions === 'missing';
    return send(
      { act: 'papers', entry: papers },
      missing ? 'held until its papers are here' : 'its papers are here',
    );
  }
  const all = [...own, ...problems];
  return (
    <ActForm confirm="Enter this" pending={pending} problems={all} onSend={submit}>
      {PAPERS.map(([paper, label]) => (
        <Segmented
          key={paper}
          name={paper}
          label={label}
          choices={CHOICES}
          value={papers[paper]}
          onValue={(said) => setPapers((before) => ({ ...before, [paper]: said }))}
          problems={problemsAt(all, paper)}
        />
      ))}
      <p>Where one is not here, every tray is held until it is, and a decontamination lead lifts the hold.</p>
    </ActForm>
  );
}

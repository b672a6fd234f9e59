'use client';

import { useState } from 'react';
import { problemsAt } from '@/app/_ui/field-problem';
import { Segmented } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import styles from '../loans.module.css';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

/** Puts a decision to one person by name. */
export function AskForm({
  loan,
  question,
  deciders,
}: {
  loan: SeenLoan;
  question: 'acceptLate' | 'useWithout';
  deciders: { id: string; name: string; role: string }[];
}) {
  const { send, pending, problems } = useLoanAct(loan);
  const [askedOf, setAskedOf] = useState('');
  const [words, setWords] = useState('');
  const [own, setOwn] = useState<SentProblem[]>([]);

  function submit() {
    if (askedOf === '') return setOwn([{ path: 'askedOf', sentence: 'Choose whom you ask.' }]);
    setOwn([]);
    return send({ act: 'ask', entry: { kind: question, askedOf, words } }, 'the question is put');
  }
  const all = [...own, ...problems];
  return (
    <ActForm confirm="Ask them" pending={pending} problems={all} onSend={submit}>
      <SelectField
        name="askedOf"
        label="Ask"
        blank="Choose a person"
        options={deciders.map(({ id, name, role }) => ({ value: id, label: `${name}, ${role}` }))}
        value={askedOf}
        onValue={setAskedOf}
        problems={problemsAt(all, 'askedOf')}
      />
      <TextArea
        name="words"
        label="What they need to know"
        rows={2}
        maxLength={400}
        value={words}
        onValue={setWords}
        problems={problemsAt(all, 'words')}
      />
    </ActForm>
  );
}

/** The answer of the person who was asked; nothing is chosen beforehand. */
export function DecideForm({
  loan,
  question,
}: {
  loan: SeenLoan;
  question: { id: string; askedBy: string; words: string };
}) {
  const { send, pending, problems } = useLoanAct(loan);
  const [answer, setAnswer] = useState<'yes' | 'no' | undefined>(undefined);
  const [words, setWords] = useState('');
  const [own, setOwn] = useState<SentProblem[]>([]);

  function submit() {
    if (answer === undefined) return setOwn([{ path: 'answer', sentence: 'Say yes or no.' }]);
    setOwn([]);
    return send({ act: 'decide', questionId: question.id, answer, words }, 'your answer is on record');
  }
  const all = [...own, ...problems];
  return (
    <ActForm confirm="This is my answer" pending={pending} problems={all} onSend={submit}>
      <p className={styles.quoted}>{`${question.askedBy} asks: ${question.words}`}</p>
      <Segmented
        name="answer"
        label="Your answer"
        choices={[
          { value: 'yes', label: 'yes' },
          { value: 'no', label: 'no, it goes back' },
        ]}
        value={answer}
        onValue={setAnswer}
        problems={problemsAt(all, 'answer')}
      />
      <TextArea
        name="words"
        label="Why"
        rows={2}
        maxLength={400}
        value={words}
        onValue={setWords}
        problems={problemsAt(all, 'words')}
      />
    </ActForm>
  );
}

'use client';

import { useEffect, useState } from 'react';
import { Button } from '@/app/_ui/button';
import type { FieldProblem } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { Tabs } from '@/app/_ui/tabs';
import { FromOutside } from './from-outside';
import { JsonInput } from './json-input';
import { Headline, Outcome } from './outcome';
import type { Schema } from './schema';
import { Fields } from './schema-field';
import { sharedAddress } from './shared-input';
import { type LiveAnswer, useLiveAnswer } from './use-live-answer';
import styles from './what-if.module.css';

/** A calculation to vary: its input as a form and as JSON, and its answer as one types. */
export function WhatIf({
  name,
  schema,
  example,
  start,
  first,
  origin,
}: {
  name: string;
  schema: Schema;
  example: unknown;
  start: unknown;
  first: LiveAnswer;
  origin: string;
}) {
  const [input, setInput] = useState(start);
  const { answer, asking } = useLiveAnswer(name, input, first);
  const problems = problemsOf(answer);

  // The address repeats what is on the screen, so that it can be sent or kept.
  useEffect(() => {
    if (input === start) return;
    const unchanged = JSON.stringify(input) === JSON.stringify(example);
    const address = unchanged ? `/calculations/${name}` : sharedAddress(name, input);
    if (address) window.history.replaceState(window.history.state, '', address);
  }, [name, input, example, start]);

  return (
    <div className={styles.whatIf}>
      <Headline name={name} answer={answer} asking={asking} />
      <div className={styles.inputs}>
        <Section
          title="What goes in"
          actions={
            <Button size="small" onClick={() => setInput(example)}>
              Back to the example
            </Button>
          }
        >
          <ProblemSummary problems={problems} focus={false} />
          <Tabs
            label="Input"
            items={[
              {
                id: 'form',
                label: 'Form',
                content: (
                  <form className={styles.fields} onSubmit={(event) => event.preventDefault()}>
                    <Fields schema={schema} path="" value={input} problems={problems} onChange={setInput} />
                  </form>
                ),
              },
              { id: 'json', label: 'JSON', content: <JsonInput value={input} onValue={setInput} /> },
            ]}
          />
        </Section>
      </div>
      <div className={styles.outcome}>
        <Outcome answer={answer} asking={asking} />
        <FromOutside name={name} input={input} origin={origin} />
      </div>
    </div>
  );
}

function problemsOf(answer: LiveAnswer): FieldProblem[] {
  if (answer.kind !== 'problem') return [];
  const { errors = [], detail } = answer.problem;
  if (errors.length === 0) return [{ path: '', sentence: detail }];
  return errors.map(({ path, message }) => ({ path: path.join('.'), sentence: message }));
}

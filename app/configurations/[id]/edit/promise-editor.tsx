'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ComboField } from '@/app/_ui/combo-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { Section } from '@/app/_ui/section';
import { TextField } from '@/app/_ui/text-field';
import type { Construct } from '@/lib/plans/plan';
import styles from '../../_parts/configurations.module.css';
import type { EditorProblem } from './editor-types';

export interface PromiseSource {
  key: string;
  label: string;
  construct: Construct;
}

/** The constructs a set of this version is meant to allow, each copied from a saved start or the plan of a case. */
export function PromiseEditor({
  promises,
  sources,
  problems,
  onPromises,
}: {
  promises: readonly { name: string; construct: Construct }[];
  sources: readonly PromiseSource[];
  problems: readonly EditorProblem[];
  onPromises: (promises: { name: string; construct: Construct }[]) => void;
}) {
  const [name, setName] = useState('');
  const [source, setSource] = useState<string | null>(null);
  const chosen = sources.find(({ key }) => key === source);
  return (
    <Section title="Constructs it is meant to allow" note={`${promises.length} of at most 12`}>
      <ul className={styles.promises}>
        {promises.map((promise, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: names change while they are typed
          <li key={at}>
            <TextField
              name={`promises.${at}.name`}
              label={`Name of construct ${at + 1}`}
              value={promise.name}
              maxLength={120}
              onValue={(text) =>
                onPromises(promises.map((one) => (one === promise ? { ...one, name: text } : one)))
              }
              problems={problemsAt(problems, `promises.${at}.name`)}
            />
            <span
              className={styles.soft}
            >{`${promise.construct.plates.length} plates, ${promise.construct.freeScrews.length} free screws`}</span>
            <Button
              kind="quiet"
              aria-label={`Remove the construct ${promise.name}`}
              onClick={() => onPromises(promises.filter((one) => one !== promise))}
            >
              Remove
            </Button>
          </li>
        ))}
      </ul>
      <FieldGrid>
        <ComboField
          name="promise.source"
          label="Copy a construct from"
          placeholder="saved start or case"
          options={sources.map(({ key, label }) => ({ value: key, label }))}
          value={source}
          onValue={setSource}
        />
        <TextField
          name="promise.name"
          label="Under the name"
          value={name}
          onValue={setName}
          maxLength={120}
        />
      </FieldGrid>
      <p>
        <Button
          disabled={!chosen || name.trim() === '' || promises.length >= 12}
          onClick={() => {
            if (!chosen) return;
            onPromises([...promises, { name: name.trim(), construct: chosen.construct }]);
            setName('');
            setSource(null);
          }}
        >
          Add the construct
        </Button>
      </p>
    </Section>
  );
}

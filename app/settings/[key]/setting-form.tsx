'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { RadioGroup } from '@/app/_ui/radio-group';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { SettingEntry, ShownBounds } from '@/lib/settings/entry';
import type { SettingField } from '@/lib/settings/fields';
import styles from '../settings.module.css';

interface FormField {
  name: string;
  field: SettingField;
  bounds: ShownBounds;
  /** The default, in words. */
  came: string;
}

/** The fields of one setting as its declaration states them, with why it is changed; everything wrong is shown at once. */
export function SettingForm({
  settingKey,
  fields,
  start,
  defaults,
  revision,
}: {
  settingKey: string;
  fields: FormField[];
  start: SettingEntry;
  defaults: SettingEntry;
  revision: number;
}) {
  const router = useRouter();
  const [entry, setEntry] = useState(start);
  const [because, setBecause] = useState('');
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState(false);
  const set = (name: string, value: SettingEntry[string]) => setEntry({ ...entry, [name]: value });

  async function save() {
    setPending(true);
    try {
      const answer = await sendJson(
        `/api/v1/settings/${settingKey}`,
        { baseRevision: revision, entry, because },
        'PUT',
      );
      if (!answer.ok) {
        const listed =
          answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }];
        setProblems(listed);
        return;
      }
      setProblems([]);
      showToast({ tone: 'good', word: 'Saved', text: 'The setting counts from now on.' });
      router.refresh();
    } catch {
      setProblems([{ path: '', sentence: 'The server can’t be reached; nothing was saved.' }]);
    } finally {
      setPending(false);
    }
  }

  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
      {fields.map((one) => (
        <OneField
          key={one.name}
          {...one}
          value={entry[one.name]}
          onValue={(value) => set(one.name, value)}
          problems={problemsAt(problems, one.name)}
        />
      ))}
      <TextArea
        name="because"
        label="Why"
        hint="Kept in the ledger beside the old and the new value"
        value={because}
        onValue={setBecause}
        rows={2}
        maxLength={300}
        problems={problemsAt(problems, 'because')}
      />
      <ButtonRow>
        <Button kind="primary" type="submit" pending={pending}>
          Save
        </Button>
        <Button onClick={() => setEntry(defaults)}>Fill in the defaults</Button>
      </ButtonRow>
    </form>
  );
}

function OneField({
  name,
  field,
  bounds,
  came,
  value,
  onValue,
  problems,
}: FormField & {
  value: SettingEntry[string] | undefined;
  onValue: (value: SettingEntry[string]) => void;
  problems: string[];
}) {
  const hint = `${field.about} Default ${came}.${boundWords(field, bounds)}`;
  switch (field.kind) {
    case 'number':
      return (
        <NumberField
          name={name}
          label={field.label}
          hint={hint}
          unit={field.unit}
          value={String(value ?? '')}
          onValue={onValue}
          problems={problems}
        />
      );
    case 'numbers':
      return (
        <TextField
          name={name}
          label={`${field.label}, in ${field.unit}`}
          hint={`${hint} Separate them with a semicolon.`}
          width="medium"
          value={String(value ?? '')}
          onValue={onValue}
          problems={problems}
        />
      );
    case 'dates':
      return (
        <TextArea
          name={name}
          label={field.label}
          hint={`${hint} One on a line, as 2026-12-25.`}
          value={String(value ?? '')}
          onValue={onValue}
          rows={4}
          maxLength={5_000}
          problems={problems}
        />
      );
    case 'choice':
      return (
        <RadioGroup
          name={name}
          label={field.label}
          hint={hint}
          choices={Object.entries(field.choices).map(([choice, label]) => ({ value: choice, label }))}
          value={String(value ?? '')}
          onValue={onValue}
          problems={problems}
        />
      );
    case 'flag':
      return (
        <RadioGroup
          name={name}
          label={field.label}
          hint={hint}
          choices={[
            { value: 'yes', label: field.yes },
            { value: 'no', label: field.no },
          ]}
          value={value === true ? 'yes' : 'no'}
          onValue={(choice) => onValue(choice === 'yes')}
          problems={problems}
        />
      );
    case 'several': {
      const chosen = Array.isArray(value) ? value : [];
      return (
        <fieldset className={styles.several}>
          <legend>{field.label}</legend>
          <span className={styles.about}>{hint}</span>
          {Object.entries(field.choices).map(([choice, label]) => (
            <CheckboxField
              key={choice}
              name={`${name}.${choice}`}
              label={label}
              checked={chosen.includes(choice)}
              onChecked={(checked) =>
                onValue(checked ? [...chosen, choice] : chosen.filter((one) => one !== choice))
              }
            />
          ))}
          {problems.map((sentence) => (
            <span key={sentence} role="alert">
              {sentence}
            </span>
          ))}
        </fieldset>
      );
    }
  }
}

function boundWords(field: SettingField, { min, max }: ShownBounds): string {
  if (!('unit' in field) || min === null || max === null) return '';
  return ` From ${min} to ${max} ${field.unit}.`;
}

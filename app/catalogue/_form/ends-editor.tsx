'use client';

import { Button } from '@/app/_ui/button';
import { FieldProblems } from '@/app/_ui/field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { NumberField } from '@/app/_ui/number-field';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { DRILLING_POSITION_WORDS, OUTER_FORM_WORDS, SLEEVE_SEAT_WORDS } from '@/lib/wording/catalogue';
import { optionsOf } from './field-input';
import styles from './form.module.css';
import type { FormApi } from './form-state';

/** The one or two ends of a sleeve. */
export function EndsEditor({ form }: { form: FormApi }) {
  const count = Math.min(2, Math.max(1, Number(form.draft['ends.count'] ?? '1')));
  return (
    <Section
      title="Ends"
      actions={
        count === 1 ? (
          <Button size="small" onClick={() => form.set('ends.count', '2')}>
            Add the other end
          </Button>
        ) : (
          <Button size="small" onClick={() => form.set('ends.count', '1')}>
            Take end 2 away
          </Button>
        )
      }
    >
      <FieldProblems id="field-ends-problems" problems={form.problemsAt('ends')} />
      {Array.from({ length: count }, (_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an end is known by its place
        <fieldset key={index} className={styles.group}>
          <legend>End {index + 1}</legend>
          <EndFields form={form} at={`ends.${index}`} />
        </fieldset>
      ))}
    </Section>
  );
}

function EndFields({ form, at }: { form: FormApi; at: string }) {
  const common = (name: string, label: string) => ({
    name: `${at}.${name}`,
    label,
    value: form.draft[`${at}.${name}`] ?? '',
    onValue: (text: string) => form.set(`${at}.${name}`, text),
    problems: form.problemsAt(`${at}.${name}`),
  });
  return (
    <>
      <FieldGrid>
        <NumberField {...common('boreMm', 'Bore')} unit="mm" step={0.1} />
        <NumberField {...common('outerMm', 'Outside diameter')} unit="mm" step={0.1} />
        <SelectField
          {...common('outerForm', 'Outer form')}
          blank="Not stated"
          options={optionsOf(OUTER_FORM_WORDS)}
        />
        <TextField {...common('lockingFamily', 'Locking family')} />
      </FieldGrid>
      <Choices form={form} name={`${at}.seatsOn`} label="Sits on" words={SLEEVE_SEAT_WORDS} />
      <Choices
        form={form}
        name={`${at}.positions`}
        label="Drilling positions"
        words={DRILLING_POSITION_WORDS}
      />
    </>
  );
}

/** Any number of a few words, kept as one text with commas; none chosen is not stated. */
function Choices({
  form,
  name,
  label,
  words,
}: {
  form: FormApi;
  name: string;
  label: string;
  words: Readonly<Record<string, string>>;
}) {
  const chosen = (form.draft[name] ?? '').split(',').filter(Boolean);
  return (
    <fieldset className={styles.choices}>
      <legend>
        {label}{' '}
        <span className={styles.note}>{chosen.length === 0 ? 'not stated' : `${chosen.length} chosen`}</span>
      </legend>
      <FieldProblems id={`${name}-problems`} problems={form.problemsAt(name)} />
      <div className={styles.boxes}>
        {Object.entries(words).map(([value, word]) => (
          <label key={value}>
            <input
              type="checkbox"
              checked={chosen.includes(value)}
              onChange={(event) =>
                form.set(
                  name,
                  Object.keys(words)
                    .filter((one) => (one === value ? event.target.checked : chosen.includes(one)))
                    .join(','),
                )
              }
            />
            {word}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

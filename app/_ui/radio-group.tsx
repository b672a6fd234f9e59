'use client';

import type { ReactNode } from 'react';
import { classNames } from './class-names';
import { FieldProblems, type FieldProps, fieldAttributes, Required } from './field';
import styles from './field.module.css';

export type Choice<Value extends string = string> = {
  value: Value;
  label: ReactNode;
  note?: ReactNode;
  disabled?: boolean;
};

type ChoiceProps<Value extends string> = FieldProps & {
  choices: readonly Choice<Value>[];
  value?: Value | null;
  defaultValue?: Value;
  onValue?: (value: Value) => void;
};

/** One of a few, each on its own line with room for a note. Nothing is chosen unless `value` or `defaultValue` says so. */
export function RadioGroup<Value extends string = string>(props: ChoiceProps<Value>) {
  return <Choices {...props} look="lines" />;
}

/** One of a few short words, as joined cells: modes and filters. */
export function Segmented<Value extends string = string>(props: ChoiceProps<Value>) {
  return <Choices {...props} look="cells" />;
}

function Choices<Value extends string>({
  choices,
  value,
  defaultValue,
  onValue,
  look,
  ...field
}: ChoiceProps<Value> & { look: 'lines' | 'cells' }) {
  const { id, name, required, ...described } = fieldAttributes(field);
  return (
    <fieldset
      className={classNames(styles.group, styles.field)}
      id={id}
      tabIndex={-1}
      aria-describedby={described['aria-describedby']}
    >
      <legend className={classNames(styles.label, field.hideLabel && styles.labelHidden)}>
        {field.label}
        {field.required ? <Required /> : null}
      </legend>
      {field.hint ? (
        <div id={`${id}-hint`} className={styles.hint}>
          {field.hint}
        </div>
      ) : null}
      <div className={look === 'cells' ? styles.segments : styles.choices}>
        {choices.map((choice) => (
          <label key={choice.value} className={look === 'cells' ? styles.segment : styles.choice}>
            <input
              type="radio"
              name={name}
              required={required}
              value={choice.value}
              checked={value === undefined ? undefined : value === choice.value}
              defaultChecked={value === undefined && defaultValue === choice.value ? true : undefined}
              onChange={() => onValue?.(choice.value)}
              disabled={field.disabled || choice.disabled}
            />
            <span>
              {choice.label}
              {choice.note ? <span className={styles.choiceNote}>{choice.note}</span> : null}
            </span>
          </label>
        ))}
      </div>
      <FieldProblems id={`${id}-problems`} problems={field.problems} />
    </fieldset>
  );
}

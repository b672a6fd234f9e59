'use client';

import { type Ref, useState } from 'react';
import { classNames } from './class-names';
import { FieldFrame, type FieldProps, fieldAttributes } from './field';
import styles from './field.module.css';

/**
 * A number as text, with its unit. The value stays what was typed (`'3.'`, `''`): parsing, and refusing, is the
 * caller's, so that nothing is rounded or cleared behind the user's back. An empty field means not stated.
 *
 * @param unit    `mm`, `g`, `min` …, shown beside the field and read out with it
 * @param stepper adds − and + keys (bench counts); they start from 0 when the field is empty
 * @param step    what one press or arrow key adds
 */
export function NumberField({
  value,
  defaultValue,
  onValue,
  onBlur,
  unit,
  step = 1,
  min,
  max,
  stepper = false,
  whole = false,
  placeholder,
  readOnly,
  inputRef,
  ...field
}: FieldProps & {
  value?: string;
  defaultValue?: string;
  onValue?: (value: string) => void;
  onBlur?: () => void;
  unit?: string;
  step?: number;
  min?: number;
  max?: number;
  stepper?: boolean;
  whole?: boolean;
  placeholder?: string;
  readOnly?: boolean;
  inputRef?: Ref<HTMLInputElement>;
}) {
  const [typed, setTyped] = useState(defaultValue ?? '');
  const current = value ?? typed;
  const attributes = fieldAttributes(field);
  const unitId = `${attributes.id}-unit`;

  function change(next: string) {
    if (value === undefined) setTyped(next);
    onValue?.(next);
  }

  function stepBy(direction: 1 | -1) {
    const from = current.trim() === '' ? 0 : Number(current.replace(',', '.'));
    if (!Number.isFinite(from)) return;
    const places = decimalPlaces(step, from);
    const next = Math.min(
      max ?? Number.POSITIVE_INFINITY,
      Math.max(min ?? Number.NEGATIVE_INFINITY, from + direction * step),
    );
    change(next.toFixed(places));
  }

  const input = (
    <input
      {...attributes}
      aria-describedby={classNames(unit ? unitId : null, attributes['aria-describedby']) || undefined}
      ref={inputRef}
      type="text"
      inputMode={whole ? 'numeric' : 'decimal'}
      autoComplete="off"
      className={classNames(styles.control, styles.numeric)}
      value={current}
      onChange={(event) => change(event.target.value)}
      onBlur={onBlur}
      onKeyDown={(event) => {
        if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
        event.preventDefault();
        if (!readOnly) stepBy(event.key === 'ArrowUp' ? 1 : -1);
      }}
      placeholder={placeholder}
      readOnly={readOnly}
      disabled={field.disabled}
    />
  );

  return (
    <FieldFrame field={field} width="number">
      <div className={styles.affixed}>
        {stepper ? (
          <StepKey
            sign="−"
            word="One less"
            field={field}
            disabled={field.disabled || readOnly}
            onPress={() => stepBy(-1)}
          />
        ) : null}
        {input}
        {unit ? (
          <span id={unitId} className={styles.unit}>
            {unit}
          </span>
        ) : null}
        {stepper ? (
          <StepKey
            sign="+"
            word="One more"
            field={field}
            disabled={field.disabled || readOnly}
            onPress={() => stepBy(1)}
          />
        ) : null}
      </div>
    </FieldFrame>
  );
}

function StepKey({
  sign,
  word,
  field,
  disabled,
  onPress,
}: {
  sign: string;
  word: string;
  field: FieldProps;
  disabled?: boolean | undefined;
  onPress: () => void;
}) {
  const about = typeof field.label === 'string' ? `: ${field.label}` : '';
  return (
    <button
      type="button"
      className={styles.step}
      aria-label={`${word}${about}`}
      disabled={disabled}
      onClick={onPress}
    >
      {sign}
    </button>
  );
}

/** Enough places to show both the step and where it started, without binary noise such as 0.30000000000000004. */
function decimalPlaces(...values: number[]): number {
  return Math.max(...values.map((value) => (String(value).split('.')[1] ?? '').length));
}

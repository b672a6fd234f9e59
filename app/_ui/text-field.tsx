'use client';

import { type HTMLInputAutoCompleteAttribute, type Ref, useState } from 'react';
import { classNames } from './class-names';
import { FieldFrame, type FieldProps, type FieldWidth, fieldAttributes } from './field';
import styles from './field.module.css';
import { PatientDataHint } from './patient-data-hint';

/** One line of text; a full-width one warns when it looks like patient data. Controlled with `value` + `onValue`, or uncontrolled with `defaultValue` inside a form. */
export function TextField({
  value,
  defaultValue,
  onValue,
  onBlur,
  width = 'full',
  placeholder,
  autoComplete = 'off',
  readOnly,
  spellCheck,
  maxLength,
  inputRef,
  ...field
}: FieldProps & {
  value?: string;
  defaultValue?: string;
  onValue?: (value: string) => void;
  onBlur?: () => void;
  width?: FieldWidth;
  placeholder?: string;
  autoComplete?: HTMLInputAutoCompleteAttribute;
  readOnly?: boolean;
  spellCheck?: boolean;
  maxLength?: number;
  inputRef?: Ref<HTMLInputElement>;
}) {
  const [typed, setTyped] = useState(defaultValue ?? '');
  const saysWhatIsWrong = (field.problems ?? []).length > 0;
  return (
    <FieldFrame field={field} width={width}>
      <input
        {...fieldAttributes(field)}
        ref={inputRef}
        type="text"
        className={classNames(styles.control)}
        value={value}
        defaultValue={defaultValue}
        onChange={(event) => {
          setTyped(event.target.value);
          onValue?.(event.target.value);
        }}
        onBlur={onBlur}
        placeholder={placeholder}
        autoComplete={autoComplete}
        readOnly={readOnly}
        disabled={field.disabled}
        spellCheck={spellCheck}
        maxLength={maxLength}
      />
      {width !== 'full' || readOnly || saysWhatIsWrong ? null : <PatientDataHint text={value ?? typed} />}
    </FieldFrame>
  );
}

'use client';

import { useState } from 'react';
import { classNames } from './class-names';
import { FieldFrame, type FieldProps, fieldAttributes } from './field';
import styles from './field.module.css';
import { PatientDataHint } from './patient-data-hint';

/** Several lines of text; warns when they look like patient data. */
export function TextArea({
  value,
  defaultValue,
  onValue,
  rows = 4,
  maxLength,
  spellCheck,
  ...field
}: FieldProps & {
  value?: string;
  defaultValue?: string;
  onValue?: (value: string) => void;
  rows?: number;
  maxLength?: number;
  spellCheck?: boolean;
}) {
  const [typed, setTyped] = useState(defaultValue ?? '');
  const saysWhatIsWrong = (field.problems ?? []).length > 0;
  return (
    <FieldFrame field={field}>
      <textarea
        {...fieldAttributes(field)}
        className={classNames(styles.control, styles.area)}
        value={value}
        defaultValue={defaultValue}
        onChange={(event) => {
          setTyped(event.target.value);
          onValue?.(event.target.value);
        }}
        rows={rows}
        maxLength={maxLength}
        disabled={field.disabled}
        spellCheck={spellCheck}
      />
      {saysWhatIsWrong ? null : <PatientDataHint text={value ?? typed} />}
    </FieldFrame>
  );
}

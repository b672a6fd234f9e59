'use client';

import { classNames } from './class-names';
import { FieldFrame, type FieldProps, fieldAttributes } from './field';
import styles from './field.module.css';

/** Several lines of text. */
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
  return (
    <FieldFrame field={field}>
      <textarea
        {...fieldAttributes(field)}
        className={classNames(styles.control, styles.area)}
        value={value}
        defaultValue={defaultValue}
        onChange={onValue ? (event) => onValue(event.target.value) : undefined}
        rows={rows}
        maxLength={maxLength}
        disabled={field.disabled}
        spellCheck={spellCheck}
      />
    </FieldFrame>
  );
}

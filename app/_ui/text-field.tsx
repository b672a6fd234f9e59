'use client';

import type { HTMLInputAutoCompleteAttribute, Ref } from 'react';
import { classNames } from './class-names';
import { FieldFrame, type FieldProps, type FieldWidth, fieldAttributes } from './field';
import styles from './field.module.css';

/** One line of text. Controlled with `value` + `onValue`, or uncontrolled with `defaultValue` inside a form. */
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
  return (
    <FieldFrame field={field} width={width}>
      <input
        {...fieldAttributes(field)}
        ref={inputRef}
        type="text"
        className={classNames(styles.control)}
        value={value}
        defaultValue={defaultValue}
        onChange={onValue ? (event) => onValue(event.target.value) : undefined}
        onBlur={onBlur}
        placeholder={placeholder}
        autoComplete={autoComplete}
        readOnly={readOnly}
        disabled={field.disabled}
        spellCheck={spellCheck}
        maxLength={maxLength}
      />
    </FieldFrame>
  );
}

'use client';

import { type Ref, useState } from 'react';
import { classNames } from './class-names';
import { FieldFrame, type FieldProps, type FieldWidth, fieldAttributes } from './field';
import styles from './field.module.css';

/**
 * A password or a PIN: hidden unless its owner asks to see it. Pasting and password managers work.
 *
 * @param pin digits only: asks a touch screen for its number keys
 */
export function SecretField({
  value,
  onValue,
  autoComplete,
  pin = false,
  width = 'medium',
  inputRef,
  ...field
}: FieldProps & {
  value: string;
  onValue: (value: string) => void;
  autoComplete: 'current-password' | 'new-password' | 'one-time-code' | 'off';
  pin?: boolean;
  width?: FieldWidth;
  inputRef?: Ref<HTMLInputElement>;
}) {
  const [seen, setSeen] = useState(false);
  return (
    <FieldFrame field={field} width={width}>
      <div className={styles.affixed}>
        <input
          {...fieldAttributes(field)}
          ref={inputRef}
          type={seen ? 'text' : 'password'}
          data-secret="true"
          inputMode={pin ? 'numeric' : undefined}
          className={classNames(styles.control)}
          value={value}
          onChange={(event) => onValue(event.target.value)}
          autoComplete={autoComplete}
          autoCapitalize="none"
          spellCheck={false}
          disabled={field.disabled}
          maxLength={200}
        />
        <button type="button" className={styles.show} aria-pressed={seen} onClick={() => setSeen(!seen)}>
          Show
        </button>
      </div>
    </FieldFrame>
  );
}

'use client';

import { type Ref, useRef } from 'react';
import { classNames } from './class-names';
import { FieldFrame, type FieldProps, fieldAttributes } from './field';
import styles from './field.module.css';
import own from './search-field.module.css';

/** A search box with a clear key. Escape clears it. */
export function SearchField({
  value,
  defaultValue,
  onValue,
  placeholder,
  inputRef,
  ...field
}: FieldProps & {
  value?: string;
  defaultValue?: string;
  onValue?: (value: string) => void;
  placeholder?: string;
  inputRef?: Ref<HTMLInputElement>;
}) {
  const input = useRef<HTMLInputElement | null>(null);

  function clear() {
    if (!input.current) return;
    if (value === undefined) input.current.value = '';
    onValue?.('');
    input.current.focus();
  }

  return (
    <FieldFrame field={field}>
      <div className={own.search}>
        <svg
          className={own.lens}
          viewBox="0 0 16 16"
          width="16"
          height="16"
          aria-hidden="true"
          focusable="false"
        >
          <circle cx="6.5" cy="6.5" r="4.75" fill="none" stroke="currentColor" strokeWidth="1.5" />
          <path d="m10 10 4.5 4.5" stroke="currentColor" strokeWidth="1.5" />
        </svg>
        <input
          {...fieldAttributes(field)}
          ref={(node) => {
            input.current = node;
            if (typeof inputRef === 'function') inputRef(node);
            else if (inputRef) inputRef.current = node;
          }}
          type="search"
          className={classNames(styles.control, own.input)}
          value={value}
          defaultValue={defaultValue}
          onChange={onValue ? (event) => onValue(event.target.value) : undefined}
          onKeyDown={(event) => {
            if (event.key === 'Escape' && event.currentTarget.value !== '') {
              event.preventDefault();
              clear();
            }
          }}
          placeholder={placeholder}
          autoComplete="off"
          spellCheck={false}
          disabled={field.disabled}
        />
        {value ? (
          <button type="button" className={own.clear} onClick={clear} aria-label="Clear the search">
            ×
          </button>
        ) : null}
      </div>
    </FieldFrame>
  );
}

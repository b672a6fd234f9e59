'use client';

import { useEffect, useState } from 'react';
import styles from './count.module.css';
import { focusNext } from './found-field';

/**
 * Large keys for gloved hands, for the field that has the focus. They leave the focus where it is and are no tab stops:
 * whoever has a keyboard has digits already.
 */
export function NumberPad({ enter }: { enter: (lineId: string, text: string) => void }) {
  const [field, setField] = useState<HTMLInputElement | null>(null);

  useEffect(() => {
    const follow = () => {
      const active = document.activeElement;
      setField(active instanceof HTMLInputElement && active.dataset.found ? active : null);
    };
    document.addEventListener('focusin', follow);
    document.addEventListener('focusout', follow);
    return () => {
      document.removeEventListener('focusin', follow);
      document.removeEventListener('focusout', follow);
    };
  }, []);

  const type = (digit: string) => {
    if (!field?.dataset.found) return;
    const whole = field.selectionStart === 0 && field.selectionEnd === field.value.length;
    const next = whole ? digit : `${field.value}${digit}`.slice(0, 3);
    enter(field.dataset.found, next);
    requestAnimationFrame(() => field.setSelectionRange(next.length, next.length));
  };
  return (
    <fieldset className={styles.pad} onPointerDown={(event) => event.preventDefault()}>
      <legend className={styles.hidden}>Number pad for the field in focus</legend>
      {['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'].map((digit) => (
        <button
          key={digit}
          type="button"
          tabIndex={-1}
          className={styles.padKey}
          disabled={field === null}
          onClick={() => type(digit)}
        >
          {digit}
        </button>
      ))}
      <button
        type="button"
        tabIndex={-1}
        className={styles.padKey}
        disabled={field === null}
        onClick={() => field?.dataset.found && enter(field.dataset.found, '')}
      >
        Clear
      </button>
      <button
        type="button"
        tabIndex={-1}
        className={styles.padNext}
        disabled={field === null}
        onClick={() => field && focusNext(field)}
      >
        Next
      </button>
    </fieldset>
  );
}

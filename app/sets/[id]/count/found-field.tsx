'use client';

import type { KeyboardEvent } from 'react';
import { piecesFrom } from '@/lib/sets/countDraft';
import styles from './count.module.css';

/**
 * The number found on one line: hollow until it is counted. Digits, arrow keys, − and +; Enter goes to the next field.
 *
 * @param label    the line in words, its expected number included
 * @param steppers the − and + keys beside it (not in the cells of a rack)
 */
export function FoundField({
  lineId,
  label,
  value,
  problem,
  steppers = false,
  onValue,
}: {
  lineId: string;
  label: string;
  value: string;
  problem: string | undefined;
  steppers?: boolean;
  onValue: (text: string) => void;
}) {
  const pieces = piecesFrom(value);
  const step = (by: 1 | -1) => onValue(String(Math.min(999, Math.max(0, (pieces ?? 0) + by))));
  const input = (
    <input
      id={`found-${lineId}`}
      data-found={lineId}
      aria-label={label}
      aria-invalid={problem ? true : undefined}
      aria-describedby={problem ? `problem-${lineId}` : undefined}
      className={styles.found}
      data-state={pieces === null ? 'hollow' : pieces === undefined ? 'bad' : 'counted'}
      type="text"
      inputMode="numeric"
      autoComplete="off"
      maxLength={4}
      value={value}
      onFocus={(event) => event.target.select()}
      onChange={(event) => onValue(event.target.value)}
      onKeyDown={(event) => onKey(event, step)}
    />
  );
  if (!steppers) return input;
  return (
    <span className={styles.stepped}>
      <button
        type="button"
        className={styles.step}
        aria-label={`One less: ${label}`}
        onClick={() => step(-1)}
      >
        −
      </button>
      {input}
      <button type="button" className={styles.step} aria-label={`One more: ${label}`} onClick={() => step(1)}>
        +
      </button>
    </span>
  );
}

function onKey(event: KeyboardEvent<HTMLInputElement>, step: (by: 1 | -1) => void): void {
  if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
    event.preventDefault();
    step(event.key === 'ArrowUp' ? 1 : -1);
  } else if (event.key === 'Enter') {
    event.preventDefault();
    focusNext(event.currentTarget);
  }
}

/** The next number to be entered in the order of the layer, or the button that ends it. */
export function focusNext(from: Element): void {
  const all = [...document.querySelectorAll<HTMLElement>('[data-found], [data-layer-end]')];
  all[all.indexOf(from as HTMLElement) + 1]?.focus();
}

'use client';

import { useSyncExternalStore } from 'react';
import { Button } from './button';
import { Status } from './status';
import styles from './toast.module.css';
import type { Tone } from './tone';

/** `word` is the status word; `text` says what happened. `action` is one thing to do about it. */
export type ToastView = {
  tone: Tone;
  word: string;
  text: string;
  action?: { label: string; onPress: () => void };
};

type Shown = ToastView & { id: number };

let shown: readonly Shown[] = [];
let nextId = 1;
const listeners = new Set<() => void>();
const none: readonly Shown[] = [];

// Reading time, and long enough for a gloved hand to reach the action.
const shownForMs = 9000;

function publish(next: readonly Shown[]) {
  shown = next;
  for (const listener of listeners) listener();
}

function dismiss(id: number) {
  publish(shown.filter((toast) => toast.id !== id));
}

/**
 * Says briefly that something happened. Good and neutral messages leave by themselves; attention and stop stay until
 * closed. Problems with a form belong in `ProblemSummary`, not here.
 */
export function showToast(toast: ToastView): void {
  const id = nextId++;
  publish([...shown, { ...toast, id }].slice(-3));
  if (toast.tone === 'good' || toast.tone === 'neutral') setTimeout(() => dismiss(id), shownForMs);
}

function subscribe(listener: () => void) {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Where toasts appear. Once, in the shell. */
export function ToastRegion() {
  const toasts = useSyncExternalStore(
    subscribe,
    () => shown,
    () => none,
  );
  return (
    <div className={styles.region} role="status" aria-live="polite" data-print="no">
      {toasts.map((toast) => (
        <div key={toast.id} className={styles.toast}>
          <div className={styles.text}>
            <Status tone={toast.tone}>{toast.word}</Status>
            <p>{toast.text}</p>
          </div>
          <div className={styles.actions}>
            {toast.action ? (
              <Button
                size="small"
                onClick={() => {
                  toast.action?.onPress();
                  dismiss(toast.id);
                }}
              >
                {toast.action.label}
              </Button>
            ) : null}
            <Button size="small" kind="quiet" onClick={() => dismiss(toast.id)}>
              Close
            </Button>
          </div>
        </div>
      ))}
    </div>
  );
}

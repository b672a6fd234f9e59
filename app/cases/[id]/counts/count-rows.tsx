'use client';

import type { KeyboardEvent } from 'react';
import { flushSync } from 'react-dom';
import { Status } from '@/app/_ui/status';
import type { TheatreState } from '@/lib/theatreCounts/state';
import styles from './counts.module.css';
import type { CountRow } from './use-theatre-count';

/** The lines of one set, or what was added: a ring until it is counted, the person's own figure afterwards. */
export function CountRows({
  rows,
  active,
  figureOf,
  state,
  pendingKeys,
  onChoose,
  onDigit,
  onWide,
}: {
  rows: readonly CountRow[];
  active: string | null;
  figureOf: (row: CountRow) => number | null;
  state: TheatreState;
  pendingKeys: ReadonlySet<string>;
  onChoose: (key: string) => void;
  onDigit: (digit: string) => void;
  onWide: () => void;
}) {
  function onKeyDown(event: KeyboardEvent): void {
    const { key, altKey, ctrlKey, metaKey } = event;
    if (altKey || ctrlKey || metaKey) return;
    const at = rows.findIndex((row) => row.key === active);
    const step = { ArrowDown: 1, ArrowUp: -1 }[key];
    // keys held back while they might have been a scan come close together: each must see what the one before did
    if (/^\d$/.test(key)) flushSync(() => onDigit(key));
    else if (key === '+') flushSync(onWide);
    else if (step !== undefined) onChoose(rows[at + step]?.key ?? rows[at]?.key ?? '');
    else return;
    event.preventDefault();
  }
  if (rows.length === 0) return null;
  return (
    <ul className={styles.rows} aria-label="Lines" onKeyDown={onKeyDown}>
      {rows.map((row) => {
        const figure = figureOf(row);
        const gone = [
          ['implanted', state.implanted.get(row.key)] as const,
          ['thrown away', state.discarded.get(row.key)] as const,
        ].filter(([, pieces]) => pieces !== undefined && pieces > 0);
        return (
          <li key={row.key}>
            <button
              type="button"
              id={`count-${row.key.replace(' ', '-')}`}
              className={styles.row}
              aria-current={row.key === active || undefined}
              data-counted={figure === null ? undefined : 'yes'}
              onClick={() => onChoose(row.key)}
            >
              <span className={styles.name}>
                {row.name}
                <span className={styles.under}>{row.under}</span>
                {gone.length > 0 ? (
                  <span className={styles.under}>
                    {gone.map(([word, pieces]) => `${pieces} ${word}`).join(', ')}
                  </span>
                ) : null}
              </span>
              {pendingKeys.has(row.key) ? <Status tone="unknown">pending</Status> : null}
              <span className={styles.figure}>
                {figure === null ? (
                  <>
                    <span className={styles.ring} aria-hidden="true" />
                    <span className={styles.hidden}>not counted</span>
                  </>
                ) : (
                  figure
                )}
              </span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

'use client';

import type { ReactNode } from 'react';
import { asideOf, type LineState } from '@/lib/bench/state';
import { ClassMark } from '../../_parts/class-mark';
import styles from './bench.module.css';
import type { BenchLine } from './bench-subject';

export interface CellView {
  line: BenchLine;
  state: LineState | undefined;
  /** Its last act is not on the server's disk yet. */
  pending: boolean;
  active: boolean;
  /** Digits typed that are no figure yet. */
  typed: string;
  problem: string | undefined;
  onChoose: (lineId: string) => void;
}

/** How a line stands by this count, in words. */
export function lineWords({ line, state, pending }: Pick<CellView, 'line' | 'state' | 'pending'>): string {
  const found = state?.found ?? null;
  const aside = state ? asideOf(state) : 0;
  const words = [
    found === null ? 'not counted' : `${found} of ${line.expected}`,
    ...(found === null ? [] : [differenceWords(found, line.expected)]),
    ...(aside > 0 ? [`${aside} put aside`] : []),
    ...(pending ? ['not saved yet'] : []),
  ];
  return words.filter((word) => word !== '').join(', ');
}

function differenceWords(found: number, expected: number): string {
  if (found === expected) return '';
  return found < expected ? `${expected - found} short` : `${found - expected} over`;
}

/** One line of the map: hollow until it is counted, and hollow again in its figure until that is durable. */
export function LineCell({
  view,
  children,
  rack = false,
}: {
  view: CellView;
  children?: ReactNode;
  rack?: boolean;
}) {
  const { line, state, pending, active, typed, problem, onChoose } = view;
  const found = state?.found ?? null;
  const aside = state ? asideOf(state) : 0;
  const difference = found === null ? '' : differenceWords(found, line.expected);
  const named = rack && line.lengthMm ? `${line.name}` : line.name;
  return (
    <button
      type="button"
      id={`cell-${line.id}`}
      data-line={line.id}
      tabIndex={active ? 0 : -1}
      className={rack ? styles.rackCell : styles.mapCell}
      aria-current={active ? 'true' : undefined}
      aria-label={`${named}, ${line.place}: ${lineWords(view)}${problem ? `. ${problem}` : ''}`}
      data-state={
        found === null ? 'hollow' : difference === '' ? 'whole' : found < line.expected ? 'short' : 'over'
      }
      data-pending={pending || undefined}
      data-problem={problem ? '' : undefined}
      onClick={() => onChoose(line.id)}
    >
      {children}
      <span className={styles.figure} aria-hidden="true">
        {typed !== '' && active ? (
          <span className={styles.typed}>{typed}_</span>
        ) : found === null ? (
          <span className={styles.ring} />
        ) : (
          <>
            <strong>{found}</strong>
            <span className={styles.of}>of {line.expected}</span>
          </>
        )}
      </span>
      {difference !== '' || aside > 0 || pending ? (
        <span className={styles.cellNote} aria-hidden="true">
          {[difference, aside > 0 ? `${aside} aside` : '', pending ? 'saving' : '']
            .filter((word) => word !== '')
            .join(', ')}
        </span>
      ) : null}
    </button>
  );
}

/** What stands in a cell of the map beside its figure. */
export function CellName({ line, children }: { line: BenchLine; children?: ReactNode }) {
  return (
    <span className={styles.cellName} aria-hidden="true">
      {children}
      <span className={styles.name}>{line.name}</span>
      <span className={styles.under}>
        {line.code} <ClassMark mustHaveClass={line.mustHaveClass} short />
      </span>
    </span>
  );
}

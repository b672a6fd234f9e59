import type { CellProblem } from './readRows';

/** One value that would be other than it is. */
export interface Change {
  /** Key of the column. */
  column: string;
  from: string;
  to: string;
  /** The part of the thing it is about, where it has several: a hole, a place in a layer. */
  of?: string;
}

/** What bringing in would do with one thing of the file, which may be told in several rows. */
export interface RowOutcome<Work = unknown> {
  rows: number[];
  kind: 'new' | 'changed' | 'unchanged';
  /** What people call it. */
  name: string;
  /** Of what is here already; `null`: it is new. */
  id: string | null;
  revision: number | null;
  changes: Change[];
  remarks: string[];
  /** What is handed to the operation that does it. */
  work: Work;
}

export interface Planned<Work = unknown> {
  outcomes: RowOutcome<Work>[];
  problems: CellProblem[];
}

/** A problem told by the rules of what a row is about, at its cell. */
export const ruleProblem = (
  row: number,
  column: string | null,
  code: string,
  sentence: string,
  value: string | null = null,
): CellProblem => ({ row, column, value, code, fault: null, sentence });

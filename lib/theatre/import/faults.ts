import type { ImportField } from './fields';

/** What can be wrong with a cell, a row or a file. Its words, with the way out, are in `lib/wording/list-import.ts`. */
export type ImportFault =
  | { code: 'column-missing' }
  | { code: 'column-twice'; columns: number[] }
  | { code: 'needed' }
  | { code: 'several' }
  | { code: 'theatre-unknown'; known: string[] }
  | { code: 'surgeon-unknown' }
  | { code: 'surgeon-ambiguous' }
  | { code: 'not-a-surgeon' }
  | { code: 'not-a-date' }
  | { code: 'no-such-day' }
  | { code: 'date-either-order' }
  | { code: 'date-other-order' }
  | { code: 'date-far-off' }
  | { code: 'date-twice' }
  | { code: 'not-a-time' }
  | { code: 'not-minutes' }
  | { code: 'minutes-out-of-range' }
  | { code: 'end-not-after-start' }
  | { code: 'end-and-minutes-differ'; minutes: number }
  | { code: 'time-skipped' }
  | { code: 'time-repeated' }
  | { code: 'is-over' }
  | { code: 'region-unknown' }
  | { code: 'side-unknown' }
  | { code: 'both-sides' }
  | { code: 'urgency-unknown' }
  | { code: 'not-a-reference' }
  | { code: 'no-such-case' }
  | { code: 'case-cancelled'; reference: string }
  | { code: 'case-over'; reference: string }
  | { code: 'case-begun'; reference: string; set: string }
  | { code: 'case-twice'; reference: string; rows: number[] }
  | { code: 'differs-from-case'; reference: string; stands: string }
  | { code: 'row-id-of-another'; reference: string }
  | { code: 'looks-like-a-patient-number' }
  | { code: 'row-counter' }
  | { code: 'row-id-too-long' }
  | { code: 'row-id-twice'; rows: number[] }
  | { code: 'theatre-taken'; reference: string; at: string }
  | { code: 'rows-collide'; rows: number[] };

/** What was settled by a rule or a choice, or is not stopped but should be seen. */
export type ImportRemark =
  | { code: 'past-midnight' }
  | { code: 'repeated-hour'; chosen: 'first' | 'second' }
  | { code: 'urgency-from-choice' }
  | { code: 'urgency-stays'; stands: string }
  | { code: 'surgeon-elsewhere'; row: number | null; reference: string | null };

/** One fault with where it is: the way a list of problems shows it. */
export interface ImportProblem {
  /** Row of the file; `null` where it concerns the whole. */
  row: number | null;
  field: ImportField | null;
  /** The heading or element it stands under. */
  column: string | null;
  /** As written, shortened; `null` where nothing is written, or where it is withheld. */
  value: string | null;
  /** It looks like a patient's data, and is not repeated. */
  withheld: boolean;
  fault: ImportFault;
}

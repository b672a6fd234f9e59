import type { ExchangeChoices } from '@/db/operations/exchange/work';
import type { FileColumn, MappedBy } from '@/lib/exchange/mapping';

/** What a person chose, as the screen keeps it. */
export type Choices = ExchangeChoices;

/** A column of ours and the column of the file that says it. */
export interface ColumnView {
  key: string;
  heading: string;
  says: string;
  number: number | null;
  by: MappedBy;
}

/** What looks damaged, for a person to answer at once for all like it. */
export interface QuestionView {
  key: string;
  heading: string;
  damage: string;
  why: string;
  canRepair: boolean;
  canKeep: boolean;
  cells: { row: number; value: string; repaired: string | null }[];
  /** Cells beyond those shown. */
  more: number;
}

export interface LineView {
  id: string;
  /** First row of the file that tells of it. */
  row: number;
  kind: 'new' | 'changed' | 'unchanged';
  name: string;
  changes: string[];
  remarks: string[];
}

export interface ProblemView {
  id: string;
  row: number | null;
  column: string | null;
  value: string | null;
  withheld: false;
  sentence: string;
}

/** A file that was tried or brought in, for the screen. */
export interface ExchangeView {
  seen: { digest: string; marks: readonly string[] };
  understood: string;
  sheets: string[];
  sheet: string | null;
  isText: boolean;
  fileColumns: FileColumn[];
  columns: ColumnView[];
  /** Columns found by likeness that nobody has confirmed, by heading. */
  undecided: string[];
  /** What the file leaves open. */
  open: { dateOrder: boolean; decimal: boolean; empty: boolean; more: boolean; fewer: boolean };
  newMakers: string[];
  questions: QuestionView[];
  problems: ProblemView[];
  /** Beyond those sent. */
  moreProblems: number;
  lines: LineView[];
  moreLines: number;
  counts: { new: number; changed: number; unchanged: number; leftOut: number };
  notes: string[];
  before: string | null;
  done: { importId: string; added: number; changed: number } | null;
}

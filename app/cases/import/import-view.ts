import type { DateOrder } from '@/lib/lists/dates';
import type { ColumnChoice, FileColumn } from '@/lib/theatre/import/columns';
import type { RepeatedHour } from '@/lib/theatre/import/wallTime';
import type { Urgency } from '@/lib/theatre/surgicalCase';

/** What a person chose where a file leaves it open; `null` where nothing is chosen. */
export interface Choices {
  sheet: string | null;
  columns: Partial<ColumnChoice>;
  dateOrder: DateOrder | null;
  repeatedHour: RepeatedHour | null;
  urgencyWhereNone: Urgency | null;
}

export type LineKind = 'new' | 'moved' | 'unchanged';

/** A row of the file and what importing it would do, in words. */
export interface ImportLine {
  row: number;
  kind: LineKind;
  /** The case it is about; `null` for a new one, which gets its reference when it is booked. */
  reference: string | null;
  caseId: string | null;
  startsAt: string;
  when: string;
  /** Where and when it was, of a case that moves. */
  before: string | null;
  theatre: string;
  what: string;
  surgeon: string;
  urgency: string;
  remarks: string[];
}

export interface ProblemLine {
  id: string;
  row: number | null;
  column: string | null;
  /** As written; why it is not shown, where it is not. */
  value: string | null;
  withheld: boolean;
  sentence: string;
}

/** A file that was tried, for the screen. */
export interface ImportView {
  digest: string;
  understood: string[];
  sheets: string[];
  sheet: string | null;
  columns: FileColumn[];
  chosen: ColumnChoice | null;
  /** The choices it was tried with. */
  choices: Choices;
  /** What a person must or may choose: only what this file leaves open. */
  open: { dateOrder: boolean; repeatedHour: boolean; urgency: boolean };
  lines: ImportLine[];
  /** Rows whose id becomes known as that of a case which stays as it is. */
  links: number;
  problems: ProblemLine[];
  /** Cases of the same theatres and days that the file does not name. */
  notNamed: string[];
  /** Promised sets that moved cases would lose. */
  lost: string[];
  importedBefore: string | null;
  done: { booked: number; moved: number; linked: number } | null;
  /** What planning anew came to after it; `null` where nothing was planned anew. */
  planned: string | null;
}

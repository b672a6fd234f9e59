import type { Act } from '../people/permissions';

/** Kinds of lists that come in and go out. Theatre lists come in by their own way (`lib/theatre/import`). */
export const LIST_KINDS = [
  'catalogue',
  'holes',
  'stock',
  'deliveries',
  'people',
  'sets',
  'configurations',
] as const;
export type ListKind = (typeof LIST_KINDS)[number];

/** The word by which a cell says that there is none, where leaving it empty would say nothing. */
export const NONE = 'none';

/**
 * How a cell of a column is read. `code` and `lot` are names that only look like numbers at times; `choice` and `choices`
 * are of `words`, by their words or their own names.
 */
export type Entry =
  | 'code'
  | 'gtin'
  | 'lot'
  | 'text'
  | 'whole'
  | 'decimal'
  | 'decimals'
  | 'pounds'
  | 'date'
  | 'yesNo'
  | 'choice'
  | 'choices';

/** One column of a list: the template, the mapping, the checks and the guide are made from it. */
export interface ListColumn {
  /** The name by which the program knows it. */
  key: string;
  heading: string;
  /** What it means, and how it is written. */
  says: string;
  entry: Entry;
  /** Without it no row says enough. */
  required: boolean;
  /** What stands in the example row; empty where the example has none. */
  example: string;
  /** What `choice` and `choices` choose from, by name. */
  words?: Readonly<Record<string, string>>;
  /** Other headings hospitals give it. */
  also?: readonly string[];
  unit?: string;
  /** `none` is an answer, and an empty cell is not. */
  none?: boolean;
}

export interface ListInfo {
  kind: ListKind;
  /** As a heading: “Catalogue”. */
  name: string;
  /** What one row of it is. */
  rowIs: string;
  /** What bringing one in does to what is here, and what it never does. */
  does: string;
  columns: readonly ListColumn[];
  /** The one column a row needs when the rest may be left to what is here: prices alone can be brought in. `null`: all required. */
  partialBy: string | null;
  /** What it takes to bring one in, and to take one out. */
  bringIn: Act;
  takeOut: Act;
}

/** The column of every list by which a row says that it is not to be brought in, as the example of a template does. */
export const LEAVE_OUT: ListColumn = {
  key: 'leaveOut',
  heading: 'Leave out',
  says: 'Any word here leaves the row out; the example row is left out so.',
  entry: 'text',
  required: false,
  example: 'example',
};

/** `Case-Code ` and `case code` are one heading. */
export const headingKey = (heading: string): string =>
  heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');

export const columnsOf = ({ columns }: ListInfo): readonly ListColumn[] => [...columns, LEAVE_OUT];

/** Whether `none` is an answer in a column. */
export const canBeNone = ({ none }: ListColumn): boolean => none === true;

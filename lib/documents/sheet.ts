import type { Scene } from './drawing/scene';

/**
 * A printed sheet before there is ink: what stands on it, in which order and how large, but not where. The painter
 * only draws. Sizes that matter to the reader are part of the model; millimetres are millimetres of paper.
 */
export interface Sheet {
  kind: SheetKind;
  /** `Count sheet`. */
  kindWords: string;
  /** What is read across a table: the set's code, the case's reference. */
  title: string;
  subtitle: string;
  facts: Fact[];
  blocks: Block[];
  record: RecordCode;
  edition: Edition;
  /** On every page, in this order. */
  cautions: string[];
}

export type SheetKind =
  | 'countSheet'
  | 'pickList'
  | 'layUpCard'
  | 'loadList'
  | 'loadInDoubt'
  | 'morningReport'
  | 'dayBeforeReport'
  | 'loanRequest'
  | 'loanReturn'
  | 'preferenceCard'
  | 'supplyOrder'
  | 'usageOrder'
  | 'reconciliation'
  | 'recordOfUse'
  | 'recall';

export interface Fact {
  term: string;
  value: string;
}

/** Which version of the thing was printed, where, when and by whom; all as people read it. */
export interface Edition {
  hospital: string;
  version: string;
  printedAt: string;
  printedBy: string;
  /** The ledger's newest entry when it was printed: its number and the first digits of its hash. */
  ledgerHead?: string;
}

/** The sheet's own name for a scanner. */
export interface RecordCode {
  /** The number a sheet was given as it was printed; the symbol then carries it alone. `null`: it has none. */
  number: string | null;
  /** GS1 element string with brackets: `(91)CS/SFS-01/…`. */
  elementString: string;
  /** The value without its identifier, as written beside the symbol. */
  text: string;
}

/**
 * `key`: capitals of at least 4 mm, read across a table · `large`: read at arm's length · `body` · `small`: beside
 * something larger that says the main thing.
 */
export type TextSize = 'key' | 'large' | 'body' | 'small';

export interface TextLine {
  text: string;
  size: TextSize;
  strong: boolean;
}

/** A shape with a character inside: told apart by its outline alone, without colour or grey. */
export interface Mark {
  shape: 'filledSquare' | 'doubleSquare' | 'circle' | 'plain';
  character: string;
  words: string;
}

export type Cell =
  | { kind: 'text'; lines: TextLine[] }
  /** Drawn at 1 : `denominator`. */
  | { kind: 'drawing'; scene: Scene; denominator: number; alt: string }
  | { kind: 'mark'; mark: Mark }
  /** A box to tick. */
  | { kind: 'tick' }
  /** Room to write in. Never filled by the program. */
  | { kind: 'blank' };

export interface Column {
  head: string;
  /** Millimetres of paper; `null` takes what is left. */
  widthMm: number | null;
  align: 'left' | 'centre';
}

export interface Table {
  kind: 'table';
  /** The table's name for those who hear it rather than see it. */
  caption: string;
  columns: Column[];
  /** The column whose cells name their row; `null` in a table to be filled in by hand. */
  rowHeader: number | null;
  rows: Cell[][];
  /** Rows are at least this high, so that there is room for a hand with a glove. */
  rowMm: number;
}

/** Screws by length: a column for each length, and under what is expected the cells to write in. */
export interface RackGrid {
  kind: 'rack';
  caption: string;
  /** `mm`, or what else the column heads are. */
  columnsAre: string;
  columns: string[];
  rows: RackRow[];
  /** Names of the rows of empty cells under each row of screws. */
  writeIn: string[];
}

export interface RackRow {
  label: string;
  mark: Mark | null;
  /** One for each column; `null` where the rack has nothing. */
  cells: (RackCell | null)[];
}

export interface RackCell {
  expected: number;
  minimum: number;
  /** Said in the cell where it differs from the head of its column. */
  label: string | null;
  mark: Mark | null;
}

export interface Notice {
  kind: 'notice';
  /** `SHORT`, `HELD`, `NOT ESTABLISHED`: the shape follows the word. */
  word: string;
  shape: 'stop' | 'unknown' | 'note';
  lines: string[];
}

export type Block =
  | { kind: 'heading'; level: 2 | 3; text: string; note: string | null; newPage?: boolean }
  | { kind: 'paragraph'; text: string; size: TextSize }
  | { kind: 'legend'; title: string; marks: Mark[] }
  | { kind: 'figure'; scene: Scene; denominator: number; alt: string; caption: string }
  | { kind: 'signatures'; boxes: { title: string; note: string | null }[] }
  | Notice
  | Table
  | RackGrid;

export const text = (words: string, size: TextSize = 'body', strong = false): TextLine => ({
  text: words,
  size,
  strong,
});

export const textCell = (...lines: TextLine[]): Cell => ({ kind: 'text', lines });

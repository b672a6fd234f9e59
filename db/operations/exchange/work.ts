import type { ListColumn } from '@/lib/exchange/list';
import type { ColumnChoice } from '@/lib/exchange/mapping';
import type { Planned, RowOutcome } from '@/lib/exchange/outcome';
import type { CatalogueChoices } from '@/lib/exchange/plans/catalogue';
import type { StockChoices } from '@/lib/exchange/plans/stock';
import type { RowChoices, SettledRow } from '@/lib/exchange/readRows';
import type { NewId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Encoding } from '@/lib/lists/decodeText';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';

/** All that a person may choose of how a file is read and brought in. */
export interface ExchangeChoices extends RowChoices, CatalogueChoices, StockChoices {
  sheet: string | null;
  encoding: Encoding | null;
  columns: ColumnChoice;
}

export interface WorkRequest {
  now: string;
  newId: NewId;
  person: Person;
}

/** What was done with one thing, kept so that it can be taken back. */
export interface Effect {
  did: 'added' | 'changed';
  subjectKind: string;
  subjectId: string;
  name: string;
  /** Of the subject afterwards; `null`: it has none. */
  revision: number | null;
  /** As it was, in the form taking back needs. */
  before: Record<string, unknown> | null;
}

/** One kind of list at work: its facts, its plan, and the operations that do it, the same as the screens’. */
export interface ListWork<Work = unknown> {
  /** Codes on record, by the key of the column they stand in: by them damaged ones are known. */
  known(read: Queries): Promise<Readonly<Record<ListColumn['key'], ReadonlySet<string>>>>;
  plan(
    read: Queries,
    rows: readonly SettledRow[],
    asked: { choices: ExchangeChoices; person: Person; now: string },
  ): Promise<Planned<Work>>;
  /** Does one outcome inside the caller's write; a refusal takes all of them back. */
  apply(
    write: Queries,
    outcome: RowOutcome<Work>,
    request: WorkRequest & { choices: ExchangeChoices },
  ): Promise<Outcome<Effect[], unknown>>;
  /** Takes one effect back; a sentence where it could not be, and nothing was done. */
  takeBack(
    write: Queries,
    effect: Effect,
    request: WorkRequest & { because: string },
  ): Promise<string | null>;
}

/** Lets an operation run as part of a larger write: its own checks, its own entry in the ledger, one commit for all. */
export const inside = (write: Queries): Pick<Database, 'tx'> => ({ tx: (work) => work(write) });

/** A refusal of an operation in one sentence. */
export const sentenceOf = (refusal: { problems: readonly { message: string }[] }): string =>
  refusal.problems.map(({ message }) => message).join(' ');

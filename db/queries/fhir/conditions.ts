import { type SQL, sql } from 'drizzle-orm';
import type { DateBounds } from '@/lib/fhir/dateBounds';

/** What is asked of every page: where it begins, how long it is, and which ids alone. */
export interface PageAsked {
  /** Ids that are looked for; `null`: any. */
  ids: readonly string[] | null;
  /** The id the page before ended with; `null`: this is the first. */
  after: string | null;
  /** At most so many. */
  limit: number;
}

/** A page in the order of its ids. One row more than asked for is looked for, so that it is known whether more follow. */
export interface PageOf<T> {
  rows: T[];
  more: boolean;
}

export const pageOf = <T>(rows: readonly T[], limit: number): PageOf<T> => ({
  rows: rows.slice(0, limit),
  more: rows.length > limit,
});

/** An item by its code here or its GTIN; both `null`: any item. */
export interface ItemAsked {
  codes: readonly string[] | null;
  gtins: readonly string[] | null;
}

/** All of them. */
export const every = (...conditions: (SQL | null)[]): SQL =>
  conditions.reduce<SQL>((all, one) => (one === null ? all : sql`${all} AND ${one}`), sql`1`);

/** Any of the values; `null`: nothing is asked. One text holds them all, so there may be any number. */
export const among = (column: SQL, values: readonly (string | number)[] | null): SQL | null =>
  values === null ? null : sql`${column} IN (SELECT value FROM json_each(${JSON.stringify(values)}))`;

export const following = (column: SQL, after: string | null): SQL | null =>
  after === null ? null : sql`${column} > ${after}`;

/** Within all of the bounds; instants are kept so that they compare as text. */
export const within = (column: SQL, bounds: readonly DateBounds[]): SQL | null =>
  bounds.length === 0
    ? null
    : every(
        ...bounds.flatMap(({ from, until }) => [
          from === null ? null : sql`${column} >= ${from}`,
          until === null ? null : sql`${column} < ${until}`,
        ]),
      );

/** The item of that id is one of those asked for. */
export const ofItems = (itemId: SQL, { codes, gtins }: ItemAsked): SQL | null =>
  codes === null && gtins === null
    ? null
    : sql`${itemId} IN (SELECT id FROM items WHERE ${among(sql`code`, codes ?? [])} OR ${among(sql`gtin`, gtins ?? [])})`;

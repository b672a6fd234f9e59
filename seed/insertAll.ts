import type { Queries } from '@/db/client';

type Table = Parameters<Queries['insert']>[0];

/** Rows at a time: SQLite binds at most 32,766 values in one statement. */
const ROWS_AT_A_TIME = 400;

/** Inserts any number of rows of one table inside the caller's transaction. */
export async function insertAll<T extends Table>(
  write: Queries,
  table: T,
  rows: T['$inferInsert'][],
): Promise<void> {
  for (let from = 0; from < rows.length; from += ROWS_AT_A_TIME) {
    await write.insert(table).values(rows.slice(from, from + ROWS_AT_A_TIME));
  }
}

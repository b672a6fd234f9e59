import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Written to see whether anything can be written. */
export const writeProbe = sqliteTable('write_probe', {
  one: integer('one').primaryKey(),
  writtenAt: text('written_at').notNull(),
});

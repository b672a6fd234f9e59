import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Kinds of notice a person does not want to be told of. */
export const noticesOff = sqliteTable(
  'notices_off',
  { personId: text('person_id').notNull(), kind: text('kind').notNull(), since: text('since').notNull() },
  (table) => [primaryKey({ columns: [table.personId, table.kind] })],
);

/** Up to which entry of the ledger a person has looked at what changed on the list. */
export const listMarks = sqliteTable('list_marks', {
  personId: text('person_id').primaryKey(),
  seq: integer('seq').notNull(),
  markedAt: text('marked_at').notNull(),
});

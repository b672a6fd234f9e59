import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** When a person last marked a day as seen, where, and how it stood then. */
export const dayLooks = sqliteTable(
  'day_looks',
  {
    personId: text('person_id').notNull(),
    view: text('view').notNull(),
    day: text('day').notNull(),
    shownAt: text('shown_at').notNull(),
    markedAt: text('marked_at').notNull(),
    ledgerSeq: integer('ledger_seq').notNull(),
    seen: json('seen').notNull(),
  },
  (table) => [primaryKey({ columns: [table.personId, table.view, table.day] })],
);

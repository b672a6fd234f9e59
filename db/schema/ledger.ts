import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

export const ledger = sqliteTable('ledger', {
  seq: integer('seq').primaryKey(),
  /** How its hash is made; see `lib/ledger/chain.ts`. */
  form: integer('form').notNull(),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
  personId: text('person_id'),
  action: text('action').notNull(),
  subjectKind: text('subject_kind').notNull(),
  subjectId: text('subject_id').notNull(),
  detail: json('detail').notNull(),
  previousHash: text('previous_hash').notNull(),
  hash: text('hash').notNull(),
});

/** Which entries name a thing, as subject or in their detail. Written by a trigger alone. */
export const ledgerThings = sqliteTable('ledger_things', {
  thing: text('thing').notNull(),
  seq: integer('seq').notNull(),
});

/** Heads that were written to a second place. */
export const ledgerHeads = sqliteTable('ledger_heads', {
  id: integer('id').primaryKey(),
  writtenAt: text('written_at').notNull(),
  seq: integer('seq').notNull(),
  hash: text('hash').notNull(),
  writtenTo: text('written_to').notNull(),
});

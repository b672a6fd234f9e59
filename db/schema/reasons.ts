import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** The hospital's own reasons for delay and for waste. What one is called never changes; it may be retired. */
export const reasonCodes = sqliteTable('reason_codes', {
  id: text('id').primaryKey(),
  kind: text('kind').notNull(),
  code: text('code').notNull(),
  words: text('words').notNull(),
  position: integer('position').notNull(),
  /** `null`: in use. */
  retiredAt: text('retired_at'),
  revision: integer('revision').notNull().default(1),
});

/** Which reason wasted pieces were given; append-only, the newest row of a move counts. */
export const moveReasons = sqliteTable('move_reasons', {
  seq: integer('seq').primaryKey(),
  moveSeq: integer('move_seq').notNull(),
  /** `null`: not stated after all. */
  reasonId: text('reason_id'),
  personId: text('person_id').notNull(),
  enteredAt: text('entered_at').notNull(),
});

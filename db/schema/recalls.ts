import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, json } from './columns';

/** What was called back and why, and by which two people it was closed. */
export const recalls = sqliteTable('recalls', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  kind: text('kind').notNull(),
  itemId: text('item_id'),
  lot: text('lot'),
  setId: text('set_id'),
  loadId: text('load_id'),
  reason: text('reason').notNull(),
  /** Of the maker's or the authority's notice. */
  noticeReference: text('notice_reference'),
  isRehearsal: flag('is_rehearsal').notNull(),
  /** What it reached as it was opened. */
  found: json('found').notNull(),
  openedBy: text('opened_by').notNull(),
  openedAt: text('opened_at').notNull(),
  closedBy: text('closed_by'),
  closedWith: text('closed_with'),
  closedAt: text('closed_at'),
  closedBecause: text('closed_because'),
  balance: json('balance'),
  revision: integer('revision').notNull(),
});

/** What was held as a recall was opened; append-only. */
export const recallHolds = sqliteTable('recall_holds', {
  recallId: text('recall_id').notNull(),
  setId: text('set_id'),
  stockId: text('stock_id'),
  pieces: integer('pieces').notNull(),
  heldAt: text('held_at').notNull(),
});

/** Who must know, what they are asked to do, and when they said they did. */
export const recallTasks = sqliteTable('recall_tasks', {
  id: text('id').primaryKey(),
  recallId: text('recall_id').notNull(),
  personId: text('person_id').notNull(),
  task: text('task').notNull(),
  acknowledgedAt: text('acknowledged_at'),
  note: text('note'),
});

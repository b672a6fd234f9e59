import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, json } from './columns';

/** What was used of one owner's stock since the usage order before it. */
export const usageOrders = sqliteTable('usage_orders', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  lenderId: text('lender_id').notNull(),
  state: text('state').notNull(),
  madeBy: text('made_by').notNull(),
  madeAt: text('made_at').notNull(),
  /** How far the journal of pieces went as it was made. */
  journalSeq: integer('journal_seq').notNull(),
  /** Pieces out of slots that may have been the owner's, as they stood then. */
  uncertain: json('uncertain').notNull(),
  approvedBy: text('approved_by'),
  approvedAt: text('approved_at'),
  sentBy: text('sent_by'),
  sentAt: text('sent_at'),
  sentHow: text('sent_how'),
  withdrawnBy: text('withdrawn_by'),
  withdrawnAt: text('withdrawn_at'),
  withdrawnBecause: text('withdrawn_because'),
  settledBy: text('settled_by'),
  settledAt: text('settled_at'),
  settledBecause: text('settled_because'),
  revision: integer('revision').notNull(),
});

/** One move of pieces on a usage order. */
export const usageOrderLines = sqliteTable('usage_order_lines', {
  id: text('id').primaryKey(),
  orderId: text('order_id').notNull(),
  lineNo: integer('line_no').notNull(),
  way: text('way').notNull(),
  moveSeq: integer('move_seq').notNull(),
  itemId: text('item_id').notNull(),
  lot: text('lot'),
  useBy: text('use_by'),
  pieces: integer('pieces').notNull(),
  outcome: text('outcome').notNull(),
  caseId: text('case_id'),
  doneOn: text('done_on').notNull(),
  knownBy: text('known_by').notNull(),
  /** What the owner is asked for; `null`: nobody has said yet. */
  replace: flag('replace'),
  withdrawn: flag('withdrawn').notNull(),
});

/** An owner's list, or a count, beside our record of that day. */
export const reconciliations = sqliteTable('reconciliations', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  lenderId: text('lender_id').notNull(),
  how: text('how').notNull(),
  /** The day the list speaks of. */
  listedOn: text('listed_on').notNull(),
  enteredBy: text('entered_by').notNull(),
  enteredAt: text('entered_at').notNull(),
  closedBy: text('closed_by'),
  closedWith: text('closed_with'),
  closedAt: text('closed_at'),
  revision: integer('revision').notNull(),
});

/** One lot of it. */
export const reconciliationLines = sqliteTable('reconciliation_lines', {
  id: text('id').primaryKey(),
  reconciliationId: text('reconciliation_id').notNull(),
  itemId: text('item_id').notNull(),
  lot: text('lot'),
  /** `null`: the lot is not on the list. */
  listed: integer('listed'),
  onShelf: integer('on_shelf').notNull(),
  withCases: integer('with_cases').notNull(),
  inSlots: integer('in_slots').notNull(),
  difference: integer('difference').notNull(),
  explained: json('explained').notNull(),
  unexplained: integer('unexplained').notNull(),
  because: text('because'),
  becauseBy: text('because_by'),
  becauseAt: text('because_at'),
});

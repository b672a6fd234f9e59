import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag } from './columns';

export const deliveries = sqliteTable('deliveries', {
  id: text('id').primaryKey(),
  supplier: text('supplier').notNull(),
  reference: text('reference').notNull(),
  arrivedOn: text('arrived_on').notNull(),
  receivedBy: text('received_by').notNull(),
  receivedAt: text('received_at').notNull(),
});

export const deliveryLines = sqliteTable('delivery_lines', {
  id: text('id').primaryKey(),
  deliveryId: text('delivery_id').notNull(),
  lineNo: integer('line_no').notNull(),
  itemId: text('item_id').notNull(),
  form: text('form').notNull(),
  /** `null`: none is on the pack. */
  lot: text('lot'),
  useBy: text('use_by'),
  count: integer('count').notNull(),
  piecesEach: integer('pieces_each').notNull(),
  owner: text('owner').notNull(),
  /** Whose it is, where it is on consignment; `null`: ours, or nobody has stated it. */
  lenderId: text('lender_id'),
  placeId: text('place_id').notNull(),
  heldBecause: text('held_because'),
  stockId: text('stock_id').notNull(),
  scanId: text('scan_id'),
  orderLineId: text('order_line_id'),
});

/** A blind count of heaps at one place. */
export const stockCounts = sqliteTable('stock_counts', {
  id: text('id').primaryKey(),
  placeId: text('place_id').notNull(),
  countClass: text('count_class').notNull(),
  tolerancePieces: integer('tolerance_pieces').notNull(),
  tolerancePercent: integer('tolerance_percent').notNull(),
  begunBy: text('begun_by').notNull(),
  begunAt: text('begun_at').notNull(),
  closedAt: text('closed_at'),
  recountBy: text('recount_by'),
  recountBegunAt: text('recount_begun_at'),
  recountClosedAt: text('recount_closed_at'),
  abandonedBy: text('abandoned_by'),
  abandonedAt: text('abandoned_at'),
  revision: integer('revision').notNull(),
});

export const stockCountLines = sqliteTable('stock_count_lines', {
  id: text('id').primaryKey(),
  countId: text('count_id').notNull(),
  /** `null`: lay there and was on no record. */
  stockId: text('stock_id'),
  itemId: text('item_id').notNull(),
  form: text('form').notNull(),
  lot: text('lot'),
  useBy: text('use_by'),
  owner: text('owner').notNull(),
  /** Found there by the counter, not listed. */
  added: flag('added').notNull(),
  recount: flag('recount').notNull(),
  decision: text('decision'),
  decidedBy: text('decided_by'),
  decidedAt: text('decided_at'),
  because: text('because'),
});

export const stockCountFigures = sqliteTable('stock_count_figures', {
  seq: integer('seq').primaryKey(),
  id: text('id').notNull(),
  lineId: text('line_id').notNull(),
  round: integer('round').notNull(),
  pieces: integer('pieces').notNull(),
  expected: integer('expected').notNull(),
  journalSeq: integer('journal_seq').notNull(),
  personId: text('person_id').notNull(),
  sessionId: text('session_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

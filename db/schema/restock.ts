import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, json } from './columns';

/** What is agreed with a maker, or holds for one item; `null` falls back. */
export const supplyTermsRows = sqliteTable('supply_terms', {
  id: text('id').primaryKey(),
  makerId: text('maker_id'),
  itemId: text('item_id'),
  leadDays: integer('lead_days'),
  leadSdDays: integer('lead_sd_days'),
  reviewDays: integer('review_days'),
  servicePercent: real('service_percent'),
  shelfLifeDays: integer('shelf_life_days'),
  /** Kept on consignment: what is used is replaced by its owner, never bought. */
  consigned: flag('consigned'),
  changedBy: text('changed_by'),
  changedAt: text('changed_at').notNull(),
  revision: integer('revision').notNull(),
});

/** A proposal of what to order. */
export const restocks = sqliteTable('restocks', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  state: text('state').notNull(),
  proposedBy: text('proposed_by').notNull(),
  proposedAt: text('proposed_at').notNull(),
  lookedAt: integer('looked_at').notNull(),
  enough: integer('enough').notNull(),
  withoutUse: integer('without_use').notNull(),
  settings: json('settings').notNull(),
  decidedBy: text('decided_by'),
  decidedAt: text('decided_at'),
  because: text('because'),
  revision: integer('revision').notNull(),
});

/** One item of a proposal, with what the calculation said of it then. */
export const restockLines = sqliteTable('restock_lines', {
  id: text('id').primaryKey(),
  restockId: text('restock_id').notNull(),
  itemId: text('item_id').notNull(),
  makerId: text('maker_id').notNull(),
  mustHaveClass: integer('must_have_class'),
  proposed: integer('proposed').notNull(),
  packOf: integer('pack_of').notNull(),
  unitPence: integer('unit_pence'),
  onHand: integer('on_hand').notNull(),
  onOrder: integer('on_order').notNull(),
  committed: integer('committed').notNull(),
  toRefill: integer('to_refill').notNull(),
  sentence: text('sentence').notNull(),
  input: json('input').notNull(),
  answer: json('answer'),
  working: json('working').notNull(),
  missing: json('missing').notNull(),
  approved: integer('approved'),
  changedBecause: text('changed_because'),
});

/** An order to one maker, made by approving a proposal. */
export const supplyOrders = sqliteTable('supply_orders', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  restockId: text('restock_id').notNull(),
  makerId: text('maker_id').notNull(),
  state: text('state').notNull(),
  orderedBy: text('ordered_by').notNull(),
  orderedAt: text('ordered_at').notNull(),
  expectedOn: text('expected_on'),
  closedBy: text('closed_by'),
  closedAt: text('closed_at'),
  closedBecause: text('closed_because'),
  revision: integer('revision').notNull(),
});

export const supplyOrderLines = sqliteTable('supply_order_lines', {
  id: text('id').primaryKey(),
  orderId: text('order_id').notNull(),
  restockLineId: text('restock_line_id').notNull(),
  itemId: text('item_id').notNull(),
  ordered: integer('ordered').notNull(),
  packOf: integer('pack_of').notNull(),
  unitPence: integer('unit_pence'),
});

/** What came on a line of an order: pieces of one lot and use-by, on one heap; append-only. */
export const supplyOrderParts = sqliteTable('supply_order_parts', {
  id: text('id').primaryKey(),
  orderLineId: text('order_line_id').notNull(),
  quantity: integer('quantity').notNull(),
  lot: text('lot'),
  useBy: text('use_by'),
  placeId: text('place_id').notNull(),
  stockId: text('stock_id').notNull(),
  personId: text('person_id').notNull(),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

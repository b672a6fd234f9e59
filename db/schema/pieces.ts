import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** The journal of pieces: one move of pieces of one item and one lot; append-only. What each act means: `lib/pieces/move.ts`. */
export const pieceMoves = sqliteTable('piece_moves', {
  seq: integer('seq').primaryKey(),
  act: text('act').notNull(),
  itemId: text('item_id').notNull(),
  /** `null`: nobody knows. */
  lot: text('lot'),
  useBy: text('use_by'),
  quantity: integer('quantity').notNull(),
  owner: text('owner').notNull(),
  fromStockId: text('from_stock_id'),
  fromSetId: text('from_set_id'),
  fromLineId: text('from_line_id'),
  toStockId: text('to_stock_id'),
  toSetId: text('to_set_id'),
  toLineId: text('to_line_id'),
  caseId: text('case_id'),
  pickId: text('pick_id'),
  asideId: text('aside_id'),
  /** The single pack, or the sterile pack of the set the slot was in. */
  packId: text('pack_id'),
  reason: text('reason'),
  /** The entry, count, delivery, order line … this came of. */
  source: text('source'),
  /** The price of one piece at that time; `null`: not known. */
  unitPence: integer('unit_pence'),
  personId: text('person_id'),
  /** The hospital's own day. */
  doneOn: text('done_on').notNull(),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

/** What lies in each slot by the journal; kept by triggers. */
export const slotHoldings = sqliteTable('slot_holdings', {
  setId: text('set_id').notNull(),
  lineId: text('line_id').notNull(),
  quantity: integer('quantity').notNull(),
});

/** Usage of each item by month; kept by a trigger. */
export const usageMonths = sqliteTable('usage_months', {
  itemId: text('item_id').notNull(),
  month: text('month').notNull(),
  implanted: integer('implanted').notNull(),
  wasted: integer('wasted').notNull(),
  notFound: integer('not_found').notNull(),
  refilled: integer('refilled').notNull(),
});

import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** One sterile barrier round one set or one item. */
export const packs = sqliteTable('packs', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  kind: text('kind').notNull(),
  setId: text('set_id'),
  turnId: text('turn_id'),
  versionId: text('version_id'),
  itemId: text('item_id'),
  lot: text('lot'),
  barrier: text('barrier').notNull(),
  packedBy: text('packed_by').notNull(),
  packedAt: text('packed_at').notNull(),
  workedGrams: integer('worked_grams'),
  weighedGrams: integer('weighed_grams'),
  contents: json('contents').notNull(),
  short: json('short'),
  decisionId: text('decision_id'),
  forCaseId: text('for_case_id'),
  loadId: text('load_id'),
  useBy: text('use_by'),
  stockId: text('stock_id'),
  state: text('state').notNull(),
  revision: integer('revision').notNull(),
});

export const labelPrints = sqliteTable('label_prints', {
  id: text('id').primaryKey(),
  packId: text('pack_id').notNull(),
  copy: integer('copy').notNull(),
  because: text('because'),
  printedBy: text('printed_by').notNull(),
  printedAt: text('printed_at').notNull(),
});

export const sheetPrints = sqliteTable('sheet_prints', {
  number: text('number').primaryKey(),
  setId: text('set_id').notNull(),
  versionId: text('version_id').notNull(),
  setRevision: integer('set_revision').notNull(),
  printedBy: text('printed_by').notNull(),
  printedAt: text('printed_at').notNull(),
});

export const sterilisers = sqliteTable('sterilisers', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  programmes: json('programmes').notNull(),
  withdrawnAt: text('withdrawn_at'),
});

/** One steriliser run. */
export const loads = sqliteTable('loads', {
  id: text('id').primaryKey(),
  number: text('number').notNull(),
  steriliserId: text('steriliser_id').notNull(),
  programme: text('programme').notNull(),
  cycleNumber: text('cycle_number'),
  state: text('state').notNull(),
  madeUpBy: text('made_up_by').notNull(),
  madeUpAt: text('made_up_at').notNull(),
  startedBy: text('started_by'),
  startedAt: text('started_at'),
  endedBy: text('ended_by'),
  endedAt: text('ended_at'),
  decidedBy: text('decided_by'),
  decidedAt: text('decided_at'),
  reason: text('reason'),
  exception: json('exception'),
  cycle: json('cycle'),
  /** The programme as it stood when the load was started. */
  ran: json('ran'),
  failure: json('failure'),
  revision: integer('revision').notNull(),
});

export const loadPacks = sqliteTable(
  'load_packs',
  {
    loadId: text('load_id').notNull(),
    packId: text('pack_id').notNull(),
    putInBy: text('put_in_by').notNull(),
    putInAt: text('put_in_at').notNull(),
    unloadedAs: text('unloaded_as'),
    unloadedBy: text('unloaded_by'),
    unloadedAt: text('unloaded_at'),
  },
  (table) => [primaryKey({ columns: [table.loadId, table.packId] })],
);

/** What a failed load put in doubt, and where each pack was then. */
export const packsInDoubt = sqliteTable(
  'packs_in_doubt',
  {
    failedLoadId: text('failed_load_id').notNull(),
    packId: text('pack_id').notNull(),
    loadId: text('load_id').notNull(),
    fateThen: text('fate_then').notNull(),
  },
  (table) => [primaryKey({ columns: [table.failedLoadId, table.packId] })],
);

export const loadReadings = sqliteTable(
  'load_readings',
  {
    loadId: text('load_id').notNull(),
    second: integer('second').notNull(),
    millicelsius: integer('millicelsius').notNull(),
    millibar: integer('millibar'),
  },
  (table) => [primaryKey({ columns: [table.loadId, table.second] })],
);

export const loadIndicators = sqliteTable('load_indicators', {
  id: text('id').primaryKey(),
  loadId: text('load_id').notNull(),
  kind: text('kind').notNull(),
  lot: text('lot'),
  useBy: text('use_by'),
  position: text('position'),
  result: text('result').notNull(),
  readBy: text('read_by'),
  readAt: text('read_at'),
});

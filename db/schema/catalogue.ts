import { sql } from 'drizzle-orm';
import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, json } from './columns';

export const makers = sqliteTable('makers', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
});

/** What all kinds share has a column; what one kind has of its own is in `detail`. */
export const items = sqliteTable('items', {
  id: text('id').primaryKey(),
  code: text('code').notNull(),
  kind: text('kind').notNull(),
  name: text('name').notNull(),
  nickname: text('nickname'),
  makerId: text('maker_id').notNull(),
  side: text('side'),
  material: text('material'),
  suppliedSterile: flag('supplied_sterile'),
  use: text('use').notNull(),
  reprocessingLimit: integer('reprocessing_limit'),
  massGrams: integer('mass_grams'),
  unitCostPence: integer('unit_cost_pence'),
  packMultiple: integer('pack_multiple').notNull(),
  gtin: text('gtin'),
  partsPerPiece: integer('parts_per_piece').notNull(),
  status: text('status').notNull(),
  detail: json('detail').notNull(),
  /** What full-text search reads, written by the mapper. */
  searchText: text('search_text').notNull(),
  /** Generated from `detail`: thread or bit diameter, or the bore of the first end. */
  diameterUm: integer('diameter_um').generatedAlwaysAs(
    sql`CAST(coalesce(detail ->> '$.threadUm', detail ->> '$.diameterUm', detail ->> '$.ends[0].boreUm') AS INTEGER)`,
  ),
  /** Generated from `detail`. */
  lengthUm: integer('length_um').generatedAlwaysAs(sql`CAST(detail ->> '$.lengthUm' AS INTEGER)`),
  /** Generated from `detail`; screws only. */
  screwFamily: text('screw_family').generatedAlwaysAs(sql`detail ->> '$.screwFamily'`),
  revision: integer('revision').notNull(),
});

export const fitRules = sqliteTable('fit_rules', {
  id: text('id').primaryKey(),
  code: text('code').notNull(),
  relation: text('relation').notNull(),
  appliesWhen: json('applies_when').notNull(),
  requires: json('requires').notNull(),
  severity: text('severity').notNull(),
  sentence: text('sentence').notNull(),
  source: json('source').notNull(),
  status: text('status').notNull(),
  draftedBy: text('drafted_by'),
  approvedBy: text('approved_by'),
  inForceFrom: text('in_force_from'),
  inForceUntil: text('in_force_until'),
  withdrawalAskedBy: text('withdrawal_asked_by'),
  withdrawnBy: text('withdrawn_by'),
  version: integer('version').notNull(),
});

export const fitExceptions = sqliteTable('fit_exceptions', {
  id: text('id').primaryKey(),
  relation: text('relation').notNull(),
  firstItemId: text('first_item_id').notNull(),
  secondItemId: text('second_item_id').notNull(),
  answer: text('answer').notNull(),
  sentence: text('sentence').notNull(),
  source: json('source').notNull(),
  status: text('status').notNull(),
  draftedBy: text('drafted_by'),
  approvedBy: text('approved_by'),
  inForceFrom: text('in_force_from'),
  inForceUntil: text('in_force_until'),
  withdrawalAskedBy: text('withdrawal_asked_by'),
  withdrawnBy: text('withdrawn_by'),
  version: integer('version').notNull(),
});

import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

export const configurations = sqliteTable('configurations', {
  id: text('id').primaryKey(),
  code: text('code').notNull(),
  name: text('name').notNull(),
  /** Out of use since: no new sets of it, while its sets go on. */
  withdrawnAt: text('withdrawn_at'),
  /** The loan it was made for, from its lender's list; `null`: it is ours. */
  loanId: text('loan_id'),
});

export const configurationVersions = sqliteTable('configuration_versions', {
  id: text('id').primaryKey(),
  configurationId: text('configuration_id').notNull(),
  version: integer('version').notNull(),
  status: text('status').notNull(),
  layers: json('layers').notNull(),
  promises: json('promises').notNull(),
  basketItemId: text('basket_item_id'),
  containerItemId: text('container_item_id'),
  note: text('note'),
  draftedBy: text('drafted_by'),
  approvedBy: text('approved_by'),
  inForceFrom: text('in_force_from'),
  /** Set from its approval on; a draft with it waits for `inForceFrom` and is frozen. */
  approvedAt: text('approved_at'),
  revision: integer('revision').notNull(),
});

export const configurationLines = sqliteTable('configuration_lines', {
  id: text('id').primaryKey(),
  versionId: text('version_id').notNull(),
  itemId: text('item_id').notNull(),
  layer: integer('layer').notNull(),
  row: integer('row').notNull(),
  slot: integer('slot').notNull(),
  rackItemId: text('rack_item_id'),
  expected: integer('expected').notNull(),
  minimum: integer('minimum').notNull(),
  mustHaveClass: integer('must_have_class').notNull(),
  substitutes: json('substitutes').notNull(),
});

export const sets = sqliteTable('sets', {
  id: text('id').primaryKey(),
  code: text('code').notNull(),
  versionId: text('version_id').notNull(),
  owner: text('owner').notNull(),
  ownerNote: text('owner_note'),
  step: text('step').notNull(),
  stepSince: text('step_since').notNull(),
  heldBecause: text('held_because'),
  readyAt: text('ready_at'),
  useBy: text('use_by'),
  placeId: text('place_id'),
  /** The turn it is in; none yet for a set that has taken no step since turns are kept. */
  turnId: text('turn_id'),
  /** The pack it is in, while it is in one. */
  packId: text('pack_id'),
  /** The step it was taken out of when it was held. */
  heldFrom: text('held_from'),
  /** The case it was sent to, while it is in theatre. */
  caseId: text('case_id'),
  withdrawnAt: text('withdrawn_at'),
  withdrawnBecause: text('withdrawn_because'),
  /** Grows with every change; a write names the revision it saw. */
  revision: integer('revision').notNull(),
});

/** What a set holds now, by line. `found` counts sound pieces; `unsound` those put aside, with `condition`. */
export const setContents = sqliteTable(
  'set_contents',
  {
    setId: text('set_id').notNull(),
    lineId: text('line_id').notNull(),
    found: integer('found').notNull(),
    unsound: integer('unsound').notNull(),
    condition: text('condition').notNull(),
  },
  (table) => [primaryKey({ columns: [table.setId, table.lineId] })],
);

/** How complete each set is, kept by triggers; a reader blind to a set may not be told of it. */
export const setCompleteness = sqliteTable('set_completeness', {
  setId: text('set_id').primaryKey(),
  lines: integer('lines').notNull(),
  expected: integer('expected').notNull(),
  found: integer('found').notNull(),
  surplus: integer('surplus').notNull(),
  unsound: integer('unsound').notNull(),
  uncounted: integer('uncounted').notNull(),
  /** Lines of class 1 and 2, and those of them that are not simply there. */
  musts: integer('musts').notNull(),
  below: integer('below').notNull(),
  short1: integer('short_1').notNull(),
  short2: integer('short_2').notNull(),
  short3: integer('short_3').notNull(),
  short4: integer('short_4').notNull(),
  /** Another number with every change of what lies in the set. */
  mark: integer('mark').notNull(),
});

/** Pieces that belong to another place: surplus to no line of this set. */
export const setForeignPieces = sqliteTable('set_foreign_pieces', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  itemId: text('item_id').notNull(),
  quantity: integer('quantity').notNull(),
  note: text('note'),
});

/** One count by one person. The id is made by the client, so that a repeat is known as a repeat. */
export const counts = sqliteTable('counts', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  versionId: text('version_id').notNull(),
  countedBy: text('counted_by').notNull(),
  countedAt: text('counted_at').notNull(),
  /** Revision of the set the counter saw when beginning. */
  baseRevision: integer('base_revision').notNull(),
});

export const countLines = sqliteTable(
  'count_lines',
  {
    countId: text('count_id').notNull(),
    lineId: text('line_id').notNull(),
    expected: integer('expected').notNull(),
    found: integer('found').notNull(),
    unsound: integer('unsound').notNull(),
    condition: text('condition').notNull(),
  },
  (table) => [primaryKey({ columns: [table.countId, table.lineId] })],
);

import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** Every version of a saved start, the present one included; append-only. */
export const planStartVersions = sqliteTable(
  'plan_start_versions',
  {
    startId: text('start_id').notNull(),
    version: integer('version').notNull(),
    body: json('body').notNull(),
    savedBy: text('saved_by').notNull(),
    savedAt: text('saved_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.startId, table.version] })],
);

/** What the hospital calls its operations. */
export const procedures = sqliteTable('procedures', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  region: text('region').notNull(),
  withdrawnAt: text('withdrawn_at'),
  revision: integer('revision').notNull().default(1),
});

/** What a surgeon wants for a procedure; what it says is in its versions. */
export const preferenceCards = sqliteTable('preference_cards', {
  id: text('id').primaryKey(),
  personId: text('person_id').notNull(),
  procedureId: text('procedure_id').notNull(),
  version: integer('version').notNull(),
  retiredAt: text('retired_at'),
  retiredBy: text('retired_by'),
});

export const preferenceCardVersions = sqliteTable(
  'preference_card_versions',
  {
    cardId: text('card_id').notNull(),
    version: integer('version').notNull(),
    body: json('body').notNull(),
    savedBy: text('saved_by').notNull(),
    savedAt: text('saved_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.cardId, table.version] })],
);

/** From which version of a saved start, and by which of a card, a case began. */
export const caseOrigins = sqliteTable('case_origins', {
  caseId: text('case_id').primaryKey(),
  startId: text('start_id'),
  startVersion: integer('start_version'),
  cardId: text('card_id'),
  cardVersion: integer('card_version'),
  begunAt: text('begun_at').notNull(),
});

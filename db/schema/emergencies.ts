import { primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** That sets were taken for a case at once, and what it took from others. Never changed. */
export const emergencies = sqliteTable('emergencies', {
  caseId: text('case_id').primaryKey(),
  constructFrom: text('construct_from').notNull(),
  construct: json('construct'),
  neededAt: text('needed_at').notNull(),
  packs: json('packs').notNull(),
  hits: json('hits').notNull(),
  happenedAt: text('happened_at').notNull(),
  recordedAt: text('recorded_at').notNull(),
  recordedBy: text('recorded_by').notNull(),
});

/** A set taken for an emergency: when it went, and when that was recorded. */
export const emergencySets = sqliteTable(
  'emergency_sets',
  {
    caseId: text('case_id').notNull(),
    setId: text('set_id').notNull(),
    takenBy: text('taken_by').notNull(),
    takenAt: text('taken_at').notNull(),
    goneAt: text('gone_at'),
    goneRecordedAt: text('gone_recorded_at'),
    goneRecordedBy: text('gone_recorded_by'),
    against: json('against').notNull(),
  },
  (table) => [primaryKey({ columns: [table.caseId, table.setId] })],
);

/** What could not be answered then, until it is closed. */
export const emergencyQuestions = sqliteTable('emergency_questions', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull(),
  kind: text('kind').notNull(),
  setId: text('set_id'),
  openedAt: text('opened_at').notNull(),
  closedAt: text('closed_at'),
  closedBy: text('closed_by'),
});

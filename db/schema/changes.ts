import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** What a change was tried against and what was shown; never changed. */
export const changeTrials = sqliteTable('change_trials', {
  id: text('id').primaryKey(),
  subjectKind: text('subject_kind').notNull(),
  subjectId: text('subject_id').notNull(),
  change: text('change').notNull(),
  contentDigest: text('content_digest').notNull(),
  basisDigest: text('basis_digest').notNull(),
  resultDigest: text('result_digest').notNull(),
  result: json('result').notNull(),
  triedBy: text('tried_by').notNull(),
  triedAt: text('tried_at').notNull(),
});

/** A configuration out of use or back: one person asks, another agrees. */
export const configurationRequests = sqliteTable('configuration_requests', {
  id: text('id').primaryKey(),
  configurationId: text('configuration_id').notNull(),
  kind: text('kind').notNull(),
  because: text('because').notNull(),
  askedBy: text('asked_by').notNull(),
  askedAt: text('asked_at').notNull(),
  decidedBy: text('decided_by'),
  decidedAt: text('decided_at'),
  decision: text('decision'),
});

import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag, json } from './columns';

/** Every acknowledged scan; append-only. */
export const scans = sqliteTable('scans', {
  seq: integer('seq').primaryKey(),
  id: text('id').notNull(),
  text: text('text').notNull(),
  how: text('how').notNull(),
  separators: text('separators').notNull(),
  personId: text('person_id').notNull(),
  sessionId: text('session_id'),
  workstationId: text('workstation_id'),
  contextKind: text('context_kind').notNull(),
  contextId: text('context_id'),
  thing: text('thing'),
  verdict: text('verdict').notNull(),
  meaning: json('meaning').notNull(),
  says: text('says'),
  sentence: text('sentence').notNull(),
  beforeId: text('before_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
  late: flag('late').notNull(),
});

/** Another piece, or the same again; append-only. */
export const scanReplies = sqliteTable('scan_replies', {
  scanId: text('scan_id').primaryKey(),
  reply: text('reply').notNull(),
  personId: text('person_id').notNull(),
  repliedAt: text('replied_at').notNull(),
});

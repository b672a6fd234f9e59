import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** The record of what was used in a case. It begins with its first entry. */
export const caseUses = sqliteTable('case_uses', {
  caseId: text('case_id').primaryKey(),
  beganBy: text('began_by').notNull(),
  beganAt: text('began_at').notNull(),
  closedBy: text('closed_by'),
  closedAt: text('closed_at'),
  entryCount: integer('entry_count'),
  entryDigest: text('entry_digest'),
  /** By slot, what it was recorded to hold as it went to the table; written as the record is closed. */
  recorded: json('recorded'),
  /** What stayed open as it was closed, by name. */
  questions: json('questions'),
  attested: json('attested'),
});

/** What was said in it, one by one; append-only. Once it is closed each says why. */
export const useEntries = sqliteTable('use_entries', {
  seq: integer('seq').primaryKey(),
  id: text('id').notNull(),
  caseId: text('case_id').notNull(),
  act: json('act').notNull(),
  /** The sterile pack the piece was in: of its set, or its own; its load is the pack's. */
  packId: text('pack_id'),
  personId: text('person_id').notNull(),
  sessionId: text('session_id'),
  scanId: text('scan_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

/** Returns that a record of use wrote for an entry. */
export const useReturns = sqliteTable('use_returns', {
  returnId: text('return_id').primaryKey(),
  entryId: text('entry_id').notNull(),
});

/** Returns that were not so: a corrected record of use took them back. They stay, and count for nothing. */
export const returnsTakenBack = sqliteTable('returns_taken_back', {
  returnId: text('return_id').primaryKey(),
  entryId: text('entry_id').notNull(),
});

/** Moves of the journal that were not so: they stay in it, and count for nothing. */
export const movesTakenBack = sqliteTable('moves_taken_back', {
  moveSeq: integer('move_seq').primaryKey(),
  entryId: text('entry_id').notNull(),
});

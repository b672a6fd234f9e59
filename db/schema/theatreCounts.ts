import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** A count in theatre, by two people together. */
export const theatreCounts = sqliteTable('theatre_counts', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull(),
  moment: text('moment').notNull(),
  personId: text('person_id').notNull(),
  secondPersonId: text('second_person_id'),
  workstationId: text('workstation_id'),
  beganAt: text('began_at').notNull(),
  closedAt: text('closed_at'),
  entryCount: integer('entry_count'),
  entryDigest: text('entry_digest'),
  abandonedAt: text('abandoned_at'),
});

/** What was said in such a count, one by one; append-only. */
export const theatreCountEntries = sqliteTable('theatre_count_entries', {
  seq: integer('seq').primaryKey(),
  id: text('id').notNull(),
  countId: text('count_id').notNull(),
  act: json('act').notNull(),
  personId: text('person_id').notNull(),
  sessionId: text('session_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

/** A figure that did not come out, until two people settle it. */
export const theatreQuestions = sqliteTable('theatre_questions', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull(),
  countId: text('count_id').notNull(),
  setId: text('set_id'),
  lineId: text('line_id'),
  itemId: text('item_id'),
  thing: text('thing').notNull(),
  expected: integer('expected').notNull(),
  counted: integer('counted').notNull(),
  openedAt: text('opened_at').notNull(),
  settledBy: text('settled_by'),
  settledWith: text('settled_with'),
  settledAt: text('settled_at'),
  settledAs: text('settled_as'),
  settledBecause: text('settled_because'),
});

/** What was done about a question; append-only. */
export const theatreQuestionActs = sqliteTable('theatre_question_acts', {
  id: text('id').primaryKey(),
  questionId: text('question_id').notNull(),
  kind: text('kind').notNull(),
  pieces: integer('pieces'),
  note: text('note'),
  personId: text('person_id').notNull(),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

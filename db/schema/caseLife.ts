import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

/** What there is to fetch for a case, and how far its kit has come. */
export const caseLives = sqliteTable('case_lives', {
  caseId: text('case_id').primaryKey(),
  planVersion: integer('plan_version').notNull(),
  list: json('list').notNull(),
  listMadeBy: text('list_made_by'),
  listMadeAt: text('list_made_at').notNull(),
  pickedBy: text('picked_by'),
  pickedAt: text('picked_at'),
  pickedNote: text('picked_note'),
  checkedBy: text('checked_by'),
  checkedAt: text('checked_at'),
  checkId: text('check_id'),
  issuedBy: text('issued_by'),
  issuedAt: text('issued_at'),
  takenBy: text('taken_by'),
  takenAt: text('taken_at'),
  /** Grows with every change but single picks; a write names the revision it saw. */
  revision: integer('revision').notNull(),
});

/** One thing taken off its place for a case: a set, or single packs of one heap. */
export const casePicks = sqliteTable('case_picks', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull(),
  setId: text('set_id'),
  stockId: text('stock_id'),
  itemId: text('item_id'),
  packId: text('pack_id'),
  lot: text('lot'),
  useBy: text('use_by'),
  quantity: integer('quantity').notNull(),
  placeId: text('place_id'),
  promiseId: text('promise_id'),
  how: text('how').notNull(),
  scanId: text('scan_id'),
  pickedBy: text('picked_by').notNull(),
  sessionId: text('session_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
  putBackId: text('put_back_id'),
  putBackBy: text('put_back_by'),
  putBackAt: text('put_back_at'),
  issuedBy: text('issued_by'),
  issuedAt: text('issued_at'),
});

/** A second person's check of a picked kit. */
export const kitChecks = sqliteTable('kit_checks', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull(),
  personId: text('person_id').notNull(),
  workstationId: text('workstation_id'),
  beganAt: text('began_at').notNull(),
  closedAt: text('closed_at'),
  abandonedAt: text('abandoned_at'),
  differences: json('differences'),
});

/** What was seen in a check, one by one; append-only. */
export const kitCheckEntries = sqliteTable('kit_check_entries', {
  seq: integer('seq').primaryKey(),
  id: text('id').notNull(),
  checkId: text('check_id').notNull(),
  act: json('act').notNull(),
  personId: text('person_id').notNull(),
  sessionId: text('session_id'),
  scanId: text('scan_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

/** What became of what was issued; append-only. */
export const caseReturns = sqliteTable('case_returns', {
  id: text('id').primaryKey(),
  pickId: text('pick_id').notNull(),
  outcome: text('outcome').notNull(),
  quantity: integer('quantity').notNull(),
  note: text('note'),
  attested: json('attested'),
  personId: text('person_id'),
  doneAt: text('done_at').notNull(),
  enteredAt: text('entered_at').notNull(),
});

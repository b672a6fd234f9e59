import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns';

export const places = sqliteTable('places', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  /** Walk from the pick bench, in metres. */
  metres: integer('metres').notNull(),
  withdrawnAt: text('withdrawn_at'),
  revision: integer('revision').notNull().default(1),
});

export const theatres = sqliteTable('theatres', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  /** How long before a case its sets must stand there; `null`: as long as the hospital's setting says. */
  leadMinutes: integer('lead_minutes'),
  revision: integer('revision').notNull().default(1),
});

/** A stretch of a day that a theatre works. */
export const theatreSessions = sqliteTable('theatre_sessions', {
  id: text('id').primaryKey(),
  theatreId: text('theatre_id').notNull(),
  sessionDate: text('session_date').notNull(),
  startsAt: text('starts_at').notNull(),
  endsAt: text('ends_at').notNull(),
  surgeonId: text('surgeon_id'),
  revision: integer('revision').notNull(),
});

export const people = sqliteTable('people', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  role: text('role').notNull(),
  leftAt: text('left_at'),
});

export const settings = sqliteTable('settings', {
  key: text('key').primaryKey(),
  value: json('value').notNull(),
  /** Grows with every change; a write names the revision it saw. */
  revision: integer('revision').notNull().default(1),
  changedBy: text('changed_by'),
  changedAt: text('changed_at'),
});

export const stock = sqliteTable('stock', {
  id: text('id').primaryKey(),
  itemId: text('item_id').notNull(),
  form: text('form').notNull(),
  lot: text('lot'),
  useBy: text('use_by'),
  quantity: integer('quantity').notNull(),
  owner: text('owner').notNull(),
  /** Whose it is, where it is on consignment; `null`: ours, or nobody has stated it. */
  lenderId: text('lender_id'),
  placeId: text('place_id').notNull(),
  heldBecause: text('held_because'),
  revision: integer('revision').notNull(),
});

export const cases = sqliteTable('cases', {
  id: text('id').primaryKey(),
  reference: text('reference').notNull(),
  theatreId: text('theatre_id').notNull(),
  /** Local calendar date of the case, against which use-by is tested. */
  caseDate: text('case_date').notNull(),
  startsAt: text('starts_at').notNull(),
  endsAt: text('ends_at').notNull(),
  region: text('region').notNull(),
  limb: text('limb').notNull(),
  surgeonId: text('surgeon_id').notNull(),
  urgency: text('urgency').notNull(),
  revision: integer('revision').notNull(),
  cancelledAt: text('cancelled_at'),
  cancelledBecause: text('cancelled_because'),
});

/** Cases by the rows of other programs' lists; of a row's id, a digest alone is kept. */
export const listRows = sqliteTable('list_rows', {
  rowDigest: text('row_digest').primaryKey(),
  caseId: text('case_id').notNull(),
  knownSince: text('known_since').notNull(),
});

export const plans = sqliteTable('plans', {
  id: text('id').primaryKey(),
  caseId: text('case_id').notNull(),
  version: integer('version').notNull(),
  status: text('status').notNull(),
  body: json('body').notNull(),
  writtenBy: text('written_by').notNull(),
  writtenAt: text('written_at').notNull(),
  confirmedBy: text('confirmed_by'),
  confirmedAt: text('confirmed_at'),
  revision: integer('revision').notNull(),
});

/** A construct kept by one person as a starting point for later plans. */
export const planStarts = sqliteTable('plan_starts', {
  id: text('id').primaryKey(),
  personId: text('person_id').notNull(),
  name: text('name').notNull(),
  /** The present version; every version is in `plan_start_versions`. */
  body: json('body').notNull(),
  savedAt: text('saved_at').notNull(),
  version: integer('version').notNull().default(1),
  retiredAt: text('retired_at'),
  retiredBy: text('retired_by'),
});

/** A set that a case counts on, and nobody else from `fromAt` until `untilAt`: the database sees to that. */
export const setPromises = sqliteTable('set_promises', {
  id: text('id').primaryKey(),
  setId: text('set_id').notNull(),
  caseId: text('case_id').notNull(),
  fromAt: text('from_at').notNull(),
  untilAt: text('until_at').notNull(),
  chosenBy: text('chosen_by').notNull(),
  promisedBy: text('promised_by'),
  promisedAt: text('promised_at'),
});

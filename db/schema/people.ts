import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { flag } from './columns';

/** Secrets are kept as hashes only: argon2id for what a person remembers, SHA-256 for random codes. */
export const credentials = sqliteTable('credentials', {
  personId: text('person_id').primaryKey(),
  passwordHash: text('password_hash'),
  pinHash: text('pin_hash'),
  badgeHash: text('badge_hash'),
  mustChangePassword: flag('must_change_password').notNull(),
  changedAt: text('changed_at').notNull(),
});

/** A shared screen at a bench, on which a badge and a PIN change the person. */
export const workstations = sqliteTable('workstations', {
  id: text('id').primaryKey(),
  name: text('name').notNull(),
  tokenHash: text('token_hash').notNull(),
  enrolledBy: text('enrolled_by').notNull(),
  enrolledAt: text('enrolled_at').notNull(),
  withdrawnAt: text('withdrawn_at'),
});

export const sessions = sqliteTable('sessions', {
  id: text('id').primaryKey(),
  tokenHash: text('token_hash').notNull(),
  /** Of the ticket that marks what is entered in this session, so that a late entry keeps its person. */
  ticketHash: text('ticket_hash').notNull(),
  personId: text('person_id').notNull(),
  workstationId: text('workstation_id'),
  method: text('method').notNull(),
  beganAt: text('began_at').notNull(),
  seenAt: text('seen_at').notNull(),
  endsAt: text('ends_at').notNull(),
  endedAt: text('ended_at'),
});

export const signInDelays = sqliteTable(
  'sign_in_delays',
  {
    personKey: text('person_key').notNull(),
    placeKey: text('place_key').notNull(),
    failures: integer('failures').notNull(),
    nextTryAt: text('next_try_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.personKey, table.placeKey] })],
);

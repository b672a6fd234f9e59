import { sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** A calendar under a secret address; of the secret only the hash is kept. */
export const calendarFeeds = sqliteTable('calendar_feeds', {
  id: text('id').primaryKey(),
  personId: text('person_id').notNull(),
  kind: text('kind').notNull(),
  theatreId: text('theatre_id'),
  name: text('name').notNull(),
  tokenHash: text('token_hash').notNull(),
  madeAt: text('made_at').notNull(),
  lastReadAt: text('last_read_at'),
  revokedAt: text('revoked_at'),
  revokedBy: text('revoked_by'),
});

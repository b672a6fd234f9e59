import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** By which another system acts as one person within some acts of theirs; of the secret only the hash is kept. */
export const apiTokens = sqliteTable('api_tokens', {
  id: text('id').primaryKey(),
  personId: text('person_id').notNull(),
  name: text('name').notNull(),
  scope: text('scope', { mode: 'json' }).$type<string[]>().notNull(),
  tokenHash: text('token_hash').notNull(),
  issuedBy: text('issued_by').notNull(),
  issuedAt: text('issued_at').notNull(),
  expiresAt: text('expires_at').notNull(),
  lastUsedAt: text('last_used_at'),
  revokedAt: text('revoked_at'),
  revokedBy: text('revoked_by'),
});

/** The answer to a write that came with an Idempotency-Key. */
export const keptAnswers = sqliteTable(
  'kept_answers',
  {
    sender: text('sender').notNull(),
    keyHash: text('key_hash').notNull(),
    requestHash: text('request_hash').notNull(),
    keptAt: text('kept_at').notNull(),
    status: integer('status').notNull(),
    body: text('body', { mode: 'json' }).$type<unknown>().notNull(),
  },
  (table) => [primaryKey({ columns: [table.sender, table.keyHash] })],
);

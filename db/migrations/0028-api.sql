-- Tokens by which other systems use the API, and the answers kept so that a request sent twice is done once.

-- Who holds the secret acts as that person, within these acts of theirs. Only the hash is kept: it is shown once.
CREATE TABLE api_tokens (
  id TEXT PRIMARY KEY CHECK (id GLOB 'token_*'),
  person_id TEXT NOT NULL REFERENCES people(id),
  -- which system it is for
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  scope TEXT NOT NULL CHECK (json_valid(scope) AND json_type(scope) = 'array'),
  token_hash TEXT NOT NULL UNIQUE CHECK (length(token_hash) = 64),
  issued_by TEXT NOT NULL REFERENCES people(id),
  issued_at TEXT NOT NULL,
  expires_at TEXT NOT NULL CHECK (expires_at > issued_at),
  last_used_at TEXT,
  revoked_at TEXT,
  revoked_by TEXT REFERENCES people(id),
  CHECK ((revoked_at IS NULL) = (revoked_by IS NULL))
) STRICT;
CREATE INDEX api_tokens_by_person ON api_tokens (person_id);
CREATE INDEX api_tokens_by_issuer ON api_tokens (issued_by);
CREATE INDEX api_tokens_by_revoker ON api_tokens (revoked_by);
CREATE TRIGGER api_tokens_stay_revoked BEFORE UPDATE ON api_tokens
  WHEN old.revoked_at IS NOT NULL AND (new.revoked_at IS NOT old.revoked_at OR new.revoked_by IS NOT old.revoked_by)
  BEGIN SELECT raise(ABORT, 'a revoked token stays revoked'); END;
CREATE TRIGGER api_tokens_stay_what_they_are BEFORE UPDATE OF person_id, name, scope, token_hash, issued_by, issued_at, expires_at
  ON api_tokens
  BEGIN SELECT raise(ABORT, 'a token is revoked, and another issued'); END;
CREATE TRIGGER api_tokens_stay BEFORE DELETE ON api_tokens
  BEGIN SELECT raise(ABORT, 'a token is revoked, not deleted'); END;

-- What was answered to a write that came with an Idempotency-Key. Written in the transaction of the write itself.
CREATE TABLE kept_answers (
  -- the token or the person that sent it
  sender TEXT NOT NULL,
  key_hash TEXT NOT NULL CHECK (length(key_hash) = 64),
  -- of method, address and body
  request_hash TEXT NOT NULL CHECK (length(request_hash) = 64),
  kept_at TEXT NOT NULL,
  status INTEGER NOT NULL CHECK (status BETWEEN 200 AND 299),
  body TEXT NOT NULL CHECK (json_valid(body)),
  PRIMARY KEY (sender, key_hash)
) STRICT, WITHOUT ROWID;
CREATE INDEX kept_answers_by_time ON kept_answers (kept_at);

-- Calendar feeds, what each person wants to be told, saved plans in versions, and preference cards.

-- A calendar under a secret address. Only the hash of the secret is kept, so the address is shown once and never again.
CREATE TABLE calendar_feeds (
  id TEXT PRIMARY KEY CHECK (id GLOB 'feed_*'),
  person_id TEXT NOT NULL REFERENCES people(id),
  kind TEXT NOT NULL CHECK (kind IN ('theatre', 'sterileServices', 'loans')),
  -- NULL: every theatre
  theatre_id TEXT REFERENCES theatres(id),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  token_hash TEXT NOT NULL UNIQUE CHECK (length(token_hash) = 64),
  made_at TEXT NOT NULL,
  last_read_at TEXT,
  revoked_at TEXT,
  revoked_by TEXT REFERENCES people(id),
  CHECK (kind <> 'loans' OR theatre_id IS NULL),
  CHECK ((revoked_at IS NULL) = (revoked_by IS NULL))
) STRICT;
CREATE INDEX calendar_feeds_by_person ON calendar_feeds (person_id, made_at);
CREATE TRIGGER calendar_feeds_stay_revoked BEFORE UPDATE ON calendar_feeds
  WHEN old.revoked_at IS NOT NULL AND (new.revoked_at IS NOT old.revoked_at OR new.revoked_by IS NOT old.revoked_by)
  BEGIN SELECT raise(ABORT, 'a revoked address stays revoked'); END;
CREATE TRIGGER calendar_feeds_keep_their_address BEFORE UPDATE OF person_id, kind, theatre_id, token_hash ON calendar_feeds
  BEGIN SELECT raise(ABORT, 'an address leads to one calendar of one person'); END;

-- Kinds of notice a person does not want; which kinds may be switched off at all the program knows.
CREATE TABLE notices_off (
  person_id TEXT NOT NULL REFERENCES people(id),
  kind TEXT NOT NULL,
  since TEXT NOT NULL,
  PRIMARY KEY (person_id, kind)
) STRICT, WITHOUT ROWID;

-- Up to which entry of the ledger a person has looked at what changed on the theatre list.
CREATE TABLE list_marks (
  person_id TEXT PRIMARY KEY REFERENCES people(id),
  seq INTEGER NOT NULL CHECK (seq >= 0),
  marked_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Saved plans in versions. `plan_starts` has the present one; every one, the present included, is kept beside it.
ALTER TABLE plan_starts ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version > 0);
ALTER TABLE plan_starts ADD COLUMN retired_at TEXT;
ALTER TABLE plan_starts ADD COLUMN retired_by TEXT REFERENCES people(id);
CREATE TABLE plan_start_versions (
  start_id TEXT NOT NULL REFERENCES plan_starts(id),
  version INTEGER NOT NULL CHECK (version > 0),
  body TEXT NOT NULL CHECK (json_valid(body)),
  saved_by TEXT NOT NULL REFERENCES people(id),
  saved_at TEXT NOT NULL,
  PRIMARY KEY (start_id, version)
) STRICT, WITHOUT ROWID;
INSERT INTO plan_start_versions (start_id, version, body, saved_by, saved_at)
  SELECT id, 1, body, person_id, saved_at FROM plan_starts;
CREATE TRIGGER plan_start_versions_never_change BEFORE UPDATE ON plan_start_versions
  BEGIN SELECT raise(ABORT, 'a version of a saved plan never changes'); END;
CREATE TRIGGER plan_start_versions_stay BEFORE DELETE ON plan_start_versions
  BEGIN SELECT raise(ABORT, 'versions of saved plans stay'); END;
CREATE TRIGGER plan_starts_begin_with_a_version AFTER INSERT ON plan_starts
  BEGIN INSERT INTO plan_start_versions (start_id, version, body, saved_by, saved_at)
    VALUES (new.id, new.version, new.body, new.person_id, new.saved_at); END;
CREATE TRIGGER plan_starts_change_by_a_version BEFORE UPDATE OF body, version, saved_at ON plan_starts
  WHEN new.version IS NOT old.version + 1
    OR NOT EXISTS (SELECT 1 FROM plan_start_versions one WHERE one.start_id = new.id AND one.version = new.version
      AND one.body = new.body AND one.saved_at = new.saved_at)
  BEGIN SELECT raise(ABORT, 'a saved plan changes by its next version'); END;
CREATE TRIGGER plan_starts_stay BEFORE DELETE ON plan_starts
  BEGIN SELECT raise(ABORT, 'a saved plan is retired, not deleted'); END;

-- What the hospital calls its operations; preference cards are kept by surgeon and procedure.
CREATE TABLE procedures (
  id TEXT PRIMARY KEY CHECK (id GLOB 'procedure_*'),
  name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 120),
  region TEXT NOT NULL,
  withdrawn_at TEXT,
  revision INTEGER NOT NULL DEFAULT 1 CHECK (revision > 0)
) STRICT;

CREATE TABLE preference_cards (
  id TEXT PRIMARY KEY CHECK (id GLOB 'card_*'),
  person_id TEXT NOT NULL REFERENCES people(id),
  procedure_id TEXT NOT NULL REFERENCES procedures(id),
  -- the present version
  version INTEGER NOT NULL CHECK (version > 0),
  retired_at TEXT,
  retired_by TEXT REFERENCES people(id),
  CHECK ((retired_at IS NULL) = (retired_by IS NULL))
) STRICT;
-- one card in use for a surgeon and a procedure; retired ones stay beside it
CREATE UNIQUE INDEX preference_cards_in_use ON preference_cards (person_id, procedure_id) WHERE retired_at IS NULL;
CREATE TRIGGER preference_cards_stay BEFORE DELETE ON preference_cards
  BEGIN SELECT raise(ABORT, 'a preference card is retired, not deleted'); END;
CREATE TABLE preference_card_versions (
  card_id TEXT NOT NULL REFERENCES preference_cards(id),
  version INTEGER NOT NULL CHECK (version > 0),
  body TEXT NOT NULL CHECK (json_valid(body)),
  saved_by TEXT NOT NULL REFERENCES people(id),
  saved_at TEXT NOT NULL,
  PRIMARY KEY (card_id, version)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER preference_card_versions_never_change BEFORE UPDATE ON preference_card_versions
  BEGIN SELECT raise(ABORT, 'a version of a preference card never changes'); END;
CREATE TRIGGER preference_card_versions_stay BEFORE DELETE ON preference_card_versions
  BEGIN SELECT raise(ABORT, 'versions of preference cards stay'); END;

-- From which saved plan, and by which card, a case began. It stays as it was, whatever becomes of either.
CREATE TABLE case_origins (
  case_id TEXT PRIMARY KEY REFERENCES cases(id),
  start_id TEXT,
  start_version INTEGER,
  card_id TEXT,
  card_version INTEGER,
  begun_at TEXT NOT NULL,
  FOREIGN KEY (start_id, start_version) REFERENCES plan_start_versions(start_id, version),
  FOREIGN KEY (card_id, card_version) REFERENCES preference_card_versions(card_id, version),
  CHECK ((start_id IS NULL) = (start_version IS NULL)),
  CHECK ((card_id IS NULL) = (card_version IS NULL)),
  CHECK (start_id IS NOT NULL OR card_id IS NOT NULL)
) STRICT, WITHOUT ROWID;
CREATE INDEX case_origins_by_start ON case_origins (start_id) WHERE start_id IS NOT NULL;
CREATE INDEX case_origins_by_card ON case_origins (card_id) WHERE card_id IS NOT NULL;
CREATE TRIGGER case_origins_stay BEFORE DELETE ON case_origins
  BEGIN SELECT raise(ABORT, 'where a case began stays'); END;

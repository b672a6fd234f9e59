-- People prove who they are: secrets, sessions, shared workstations, and what slows a guesser down.

CREATE TABLE credentials (
  person_id TEXT PRIMARY KEY REFERENCES people(id),
  -- argon2id in PHC form; NULL: this way in is not open to this person
  password_hash TEXT CHECK (password_hash GLOB '$argon2id$*'),
  pin_hash TEXT CHECK (pin_hash GLOB '$argon2id$*'),
  -- SHA-256 of the badge's random code: the code itself is nowhere
  badge_hash TEXT UNIQUE CHECK (length(badge_hash) = 64),
  must_change_password INTEGER NOT NULL DEFAULT 0 CHECK (must_change_password IN (0, 1)),
  changed_at TEXT NOT NULL
) STRICT;

ALTER TABLE people ADD COLUMN left_at TEXT;

CREATE TABLE workstations (
  id TEXT PRIMARY KEY CHECK (id GLOB 'workstation_*'),
  name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 60),
  token_hash TEXT NOT NULL UNIQUE CHECK (length(token_hash) = 64),
  enrolled_by TEXT NOT NULL REFERENCES people(id),
  enrolled_at TEXT NOT NULL,
  withdrawn_at TEXT
) STRICT;

CREATE TABLE sessions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'session_*'),
  -- SHA-256 of the cookie's 32 random bytes, and of the ticket that marks what is entered in this session
  token_hash TEXT NOT NULL UNIQUE CHECK (length(token_hash) = 64),
  ticket_hash TEXT NOT NULL UNIQUE CHECK (length(ticket_hash) = 64),
  person_id TEXT NOT NULL REFERENCES people(id),
  workstation_id TEXT REFERENCES workstations(id),
  method TEXT NOT NULL CHECK (method IN ('password', 'badgeAndPin', 'oneTimeCode')),
  began_at TEXT NOT NULL,
  seen_at TEXT NOT NULL,
  ends_at TEXT NOT NULL,
  ended_at TEXT
) STRICT;
CREATE INDEX sessions_by_person ON sessions (person_id, ended_at);

-- One row for a person at a place (a workstation, or an address): nobody is locked out everywhere.
CREATE TABLE sign_in_delays (
  person_key TEXT NOT NULL,
  place_key TEXT NOT NULL,
  failures INTEGER NOT NULL CHECK (failures > 0),
  next_try_at TEXT NOT NULL,
  PRIMARY KEY (person_key, place_key)
) STRICT, WITHOUT ROWID;

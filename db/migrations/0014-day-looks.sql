-- When a person last marked a day of the theatre list as seen, and how it stood as it was shown to them. Theirs alone, and of
-- no use once the day is long over.
CREATE TABLE day_looks (
  person_id TEXT NOT NULL REFERENCES people(id),
  view TEXT NOT NULL CHECK (view IN ('morning', 'dayBefore', 'theatreList')),
  day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  shown_at TEXT NOT NULL CHECK (shown_at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9].[0-9][0-9][0-9]Z'),
  marked_at TEXT NOT NULL CHECK (marked_at >= shown_at),
  -- the newest entry of the ledger when it was shown
  ledger_seq INTEGER NOT NULL CHECK (ledger_seq >= 0),
  seen TEXT NOT NULL CHECK (json_valid(seen) AND json_type(seen) = 'array'),
  PRIMARY KEY (person_id, view, day)
) STRICT, WITHOUT ROWID;
-- A page left open since yesterday takes nothing back that was seen this morning.
CREATE TRIGGER day_looks_never_go_back BEFORE UPDATE ON day_looks
  WHEN new.shown_at < old.shown_at OR new.ledger_seq < old.ledger_seq
  BEGIN SELECT raise(ABORT, 'a later look is on record'); END;

-- That a set is wanted back in the sterile store sooner than its turn would bring it, for which case and by when. It goes
-- first in what is done next until it is there, or until the case begins.
CREATE TABLE wanted_turns (
  id TEXT PRIMARY KEY CHECK (id GLOB 'wantedTurn_*'),
  set_id TEXT NOT NULL REFERENCES sets(id),
  for_case_id TEXT NOT NULL REFERENCES cases(id),
  -- the turn after this case is meant; NULL: the turn the set is in
  after_case_id TEXT REFERENCES cases(id),
  wanted_by TEXT NOT NULL CHECK (wanted_by GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9].[0-9][0-9][0-9]Z'),
  asked_by TEXT NOT NULL REFERENCES people(id),
  asked_at TEXT NOT NULL,
  -- asked again: the newest holds
  UNIQUE (set_id, for_case_id)
) STRICT;

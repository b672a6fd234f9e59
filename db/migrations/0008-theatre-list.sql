-- The theatre list: sessions, what becomes of a case, and which set is promised to which case from when until when.

-- How long before a case begins its sets must stand in this theatre; NULL: the hospital's own lead.
ALTER TABLE theatres ADD COLUMN lead_minutes INTEGER CHECK (lead_minutes BETWEEN 0 AND 1440);
ALTER TABLE theatres ADD COLUMN revision INTEGER NOT NULL DEFAULT 1 CHECK (revision > 0);

-- A stretch of a day that a theatre works. What lies outside of every session is out of hours.
CREATE TABLE theatre_sessions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'theatreSession_*'),
  theatre_id TEXT NOT NULL REFERENCES theatres(id),
  session_date TEXT NOT NULL,
  starts_at TEXT NOT NULL,
  ends_at TEXT NOT NULL,
  surgeon_id TEXT REFERENCES people(id),
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK (starts_at < ends_at)
) STRICT;
CREATE INDEX theatre_sessions_by_date ON theatre_sessions (session_date, theatre_id);
CREATE TRIGGER theatre_sessions_never_overlap BEFORE INSERT ON theatre_sessions
  WHEN EXISTS (SELECT 1 FROM theatre_sessions other WHERE other.theatre_id = new.theatre_id
    AND other.starts_at < new.ends_at AND new.starts_at < other.ends_at)
  BEGIN SELECT raise(ABORT, 'two sessions of a theatre would overlap'); END;
CREATE TRIGGER theatre_sessions_stay_apart BEFORE UPDATE OF theatre_id, starts_at, ends_at ON theatre_sessions
  WHEN EXISTS (SELECT 1 FROM theatre_sessions other WHERE other.id <> new.id AND other.theatre_id = new.theatre_id
    AND other.starts_at < new.ends_at AND new.starts_at < other.ends_at)
  BEGIN SELECT raise(ABORT, 'two sessions of a theatre would overlap'); END;

-- A case that is cancelled stays on record, and takes nothing from the store.
ALTER TABLE cases ADD COLUMN cancelled_at TEXT;
ALTER TABLE cases ADD COLUMN cancelled_because TEXT;
CREATE TRIGGER cancelled_cases_rest BEFORE UPDATE OF theatre_id, starts_at, ends_at, urgency ON cases
  WHEN old.cancelled_at IS NOT NULL AND new.cancelled_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'a cancelled case is not moved: put it back on the list first'); END;

-- The set is spoken for from `from_at`, when it must stand in theatre, until `until_at`, when it can be back in the sterile
-- store; the end itself is free again. Instants are written as JavaScript does, so that they sort as they follow.
CREATE TABLE new_set_promises (
  id TEXT PRIMARY KEY,
  set_id TEXT NOT NULL REFERENCES sets(id),
  case_id TEXT NOT NULL REFERENCES cases(id),
  from_at TEXT NOT NULL CHECK (from_at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9].[0-9][0-9][0-9]Z'),
  until_at TEXT NOT NULL CHECK (until_at GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9].[0-9][0-9][0-9]Z'),
  -- 'person': somebody chose this set, and planning anew leaves it; 'planning': the cheapest choice at the time
  chosen_by TEXT NOT NULL CHECK (chosen_by IN ('person', 'planning')),
  promised_by TEXT REFERENCES people(id),
  promised_at TEXT,
  UNIQUE (set_id, case_id),
  CHECK (from_at < until_at)
) STRICT;
-- promises made before had no end of their own: from an hour before until six hours after
INSERT INTO new_set_promises (id, set_id, case_id, from_at, until_at, chosen_by)
  SELECT promise.id, promise.set_id, promise.case_id,
    strftime('%Y-%m-%dT%H:%M:%fZ', booked.starts_at, '-60 minutes'), strftime('%Y-%m-%dT%H:%M:%fZ', booked.ends_at, '+360 minutes'), 'person'
  FROM set_promises promise JOIN cases booked ON booked.id = promise.case_id
  -- of two that could not both be kept, the earlier case has it
  WHERE NOT EXISTS (
    SELECT 1 FROM set_promises rival JOIN cases earlier ON earlier.id = rival.case_id
    WHERE rival.set_id = promise.set_id AND rival.id <> promise.id
      AND (earlier.starts_at < booked.starts_at OR (earlier.starts_at = booked.starts_at AND rival.id < promise.id))
      AND julianday(earlier.ends_at) + 360.0 / 1440 > julianday(booked.starts_at) - 60.0 / 1440);
DROP TABLE set_promises;
ALTER TABLE new_set_promises RENAME TO set_promises;
CREATE INDEX set_promises_by_case ON set_promises (case_id);
CREATE INDEX set_promises_by_set ON set_promises (set_id, from_at);

-- However many people promise at once: one set, one case at a time.
CREATE TRIGGER promises_never_overlap BEFORE INSERT ON set_promises
  WHEN EXISTS (SELECT 1 FROM set_promises other WHERE other.set_id = new.set_id AND other.id <> new.id
    AND other.from_at < new.until_at AND new.from_at < other.until_at)
  BEGIN SELECT raise(ABORT, 'the set is promised to another case over that time'); END;
CREATE TRIGGER promises_stay_apart BEFORE UPDATE OF set_id, from_at, until_at ON set_promises
  WHEN EXISTS (SELECT 1 FROM set_promises other WHERE other.set_id = new.set_id AND other.id <> new.id
    AND other.from_at < new.until_at AND new.from_at < other.until_at)
  BEGIN SELECT raise(ABORT, 'the set is promised to another case over that time'); END;
-- A promise covers its case, whole, and no case that is cancelled or set that is out of service.
CREATE TRIGGER promises_cover_their_case BEFORE INSERT ON set_promises
  WHEN NOT EXISTS (SELECT 1 FROM cases WHERE id = new.case_id AND cancelled_at IS NULL
    AND new.from_at <= starts_at AND new.until_at >= ends_at)
  BEGIN SELECT raise(ABORT, 'a promise covers its case, which is not cancelled'); END;
CREATE TRIGGER promises_still_cover_their_case BEFORE UPDATE OF case_id, from_at, until_at ON set_promises
  WHEN NOT EXISTS (SELECT 1 FROM cases WHERE id = new.case_id AND cancelled_at IS NULL
    AND new.from_at <= starts_at AND new.until_at >= ends_at)
  BEGIN SELECT raise(ABORT, 'a promise covers its case, which is not cancelled'); END;
CREATE TRIGGER promises_are_of_sets_in_service BEFORE INSERT ON set_promises
  WHEN EXISTS (SELECT 1 FROM sets WHERE id = new.set_id AND withdrawn_at IS NOT NULL)
  BEGIN SELECT raise(ABORT, 'a set out of service is promised to nobody'); END;
CREATE TRIGGER moved_cases_keep_no_old_promise BEFORE UPDATE OF starts_at, ends_at, cancelled_at ON cases
  WHEN EXISTS (SELECT 1 FROM set_promises WHERE case_id = new.id
    AND (new.cancelled_at IS NOT NULL OR from_at > new.starts_at OR until_at < new.ends_at))
  BEGIN SELECT raise(ABORT, 'the promises of the case first'); END;

-- Every scan that was acknowledged, never changed. Its id is made where it was scanned, so that a repeat is known as one.

CREATE TABLE scans (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id GLOB 'scan_*'),
  -- a badge never gets here, whatever the program sends
  text TEXT NOT NULL CHECK (length(text) BETWEEN 1 AND 1000 AND upper(text) NOT GLOB '*KWBADGE*'),
  how TEXT NOT NULL CHECK (how IN ('scanner', 'camera', 'typed')),
  separators TEXT NOT NULL CHECK (separators IN ('mayBeLost', 'sent')),
  person_id TEXT NOT NULL REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  workstation_id TEXT REFERENCES workstations(id),
  context_kind TEXT NOT NULL CHECK (context_kind IN ('none', 'bench', 'load', 'set')),
  context_id TEXT,
  -- what tells one thing from another within a context; NULL where nothing is counted
  thing TEXT,
  -- as it was answered, and is answered again
  verdict TEXT NOT NULL CHECK (verdict IN ('understood', 'ask', 'already', 'refused', 'unknown')),
  meaning TEXT NOT NULL CHECK (json_valid(meaning)),
  says TEXT,
  sentence TEXT NOT NULL,
  before_id TEXT REFERENCES scans(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  late INTEGER NOT NULL CHECK (late IN (0, 1)),
  CHECK ((context_kind = 'none') = (context_id IS NULL))
) STRICT;
CREATE INDEX scans_by_thing ON scans (context_kind, context_id, thing, seq) WHERE thing IS NOT NULL;
CREATE INDEX scans_by_person ON scans (person_id, seq);
CREATE INDEX scans_by_workstation ON scans (workstation_id, seq) WHERE workstation_id IS NOT NULL;
CREATE TRIGGER scans_are_never_changed BEFORE UPDATE ON scans
  BEGIN SELECT raise(ABORT, 'scans are append-only'); END;
CREATE TRIGGER scans_are_never_deleted BEFORE DELETE ON scans
  BEGIN SELECT raise(ABORT, 'scans are append-only'); END;

-- What a person said when asked whether it was another piece or the same again.
CREATE TABLE scan_replies (
  scan_id TEXT PRIMARY KEY REFERENCES scans(id),
  reply TEXT NOT NULL CHECK (reply IN ('another', 'same')),
  person_id TEXT NOT NULL REFERENCES people(id),
  replied_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TRIGGER scan_replies_are_never_changed BEFORE UPDATE ON scan_replies
  BEGIN SELECT raise(ABORT, 'replies are append-only'); END;
CREATE TRIGGER scan_replies_are_never_deleted BEFORE DELETE ON scan_replies
  BEGIN SELECT raise(ABORT, 'replies are append-only'); END;

-- Whether a sheet is the newest of its set is asked at every scan of one.
CREATE INDEX sheet_prints_by_set ON sheet_prints (set_id, printed_at);

-- Lists that came in, what each of them did, and how a hospital's own columns are read.

CREATE TABLE imports (
  id TEXT PRIMARY KEY CHECK (id GLOB 'import_*'),
  list TEXT NOT NULL CHECK (list IN ('catalogue', 'holes', 'stock', 'deliveries', 'people', 'sets', 'configurations')),
  -- of the file, and of all that was chosen for reading it; nothing of the file itself is kept
  file_sha256 TEXT NOT NULL CHECK (length(file_sha256) = 64),
  read_as TEXT NOT NULL CHECK (length(read_as) = 64),
  added INTEGER NOT NULL CHECK (added >= 0),
  changed INTEGER NOT NULL CHECK (changed >= 0),
  unchanged INTEGER NOT NULL CHECK (unchanged >= 0),
  brought_in_by TEXT NOT NULL REFERENCES people(id),
  brought_in_at TEXT NOT NULL,
  taken_back_by TEXT REFERENCES people(id),
  taken_back_at TEXT,
  -- what could not be taken back, each with its name and why
  left_as_it_is TEXT CHECK (left_as_it_is IS NULL OR json_valid(left_as_it_is)),
  CHECK ((taken_back_by IS NULL) = (taken_back_at IS NULL) AND (left_as_it_is IS NULL) = (taken_back_at IS NULL))
) STRICT;
CREATE INDEX imports_by_time ON imports (brought_in_at);
CREATE TRIGGER imports_are_never_deleted BEFORE DELETE ON imports
  BEGIN SELECT raise(ABORT, 'what came in stays on record'); END;
CREATE TRIGGER imports_are_taken_back_once BEFORE UPDATE ON imports
  WHEN old.taken_back_at IS NOT NULL OR new.id IS NOT old.id OR new.list IS NOT old.list OR new.file_sha256 IS NOT old.file_sha256
    OR new.read_as IS NOT old.read_as OR new.added IS NOT old.added OR new.changed IS NOT old.changed
    OR new.unchanged IS NOT old.unchanged OR new.brought_in_by IS NOT old.brought_in_by
    OR new.brought_in_at IS NOT old.brought_in_at
  BEGIN SELECT raise(ABORT, 'of what came in only its taking back is written, once'); END;

-- What a list did, thing by thing, with what is needed to take it back; append-only.
CREATE TABLE import_effects (
  import_id TEXT NOT NULL REFERENCES imports(id),
  effect_no INTEGER NOT NULL CHECK (effect_no > 0),
  did TEXT NOT NULL CHECK (did IN ('added', 'changed')),
  subject_kind TEXT NOT NULL,
  subject_id TEXT NOT NULL,
  -- as people call it
  name TEXT NOT NULL,
  -- of the subject, when the list had done it; NULL: it has none
  revision INTEGER,
  -- as it was before, in the form the taking back needs; NULL: it was not there
  before TEXT CHECK (before IS NULL OR json_valid(before)),
  PRIMARY KEY (import_id, effect_no)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER import_effects_are_never_changed BEFORE UPDATE ON import_effects
  BEGIN SELECT raise(ABORT, 'what a list did is append-only'); END;
CREATE TRIGGER import_effects_are_never_deleted BEFORE DELETE ON import_effects
  BEGIN SELECT raise(ABORT, 'what a list did is append-only'); END;

-- Which column of a file says what, as somebody decided it for files with these headings.
CREATE TABLE column_mappings (
  list TEXT NOT NULL,
  -- digest of the headings in their order
  signature TEXT NOT NULL CHECK (length(signature) = 64),
  columns TEXT NOT NULL CHECK (json_valid(columns)),
  kept_by TEXT NOT NULL REFERENCES people(id),
  kept_at TEXT NOT NULL,
  PRIMARY KEY (list, signature)
) STRICT, WITHOUT ROWID;

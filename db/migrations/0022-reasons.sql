-- The hospital's own reasons for delay and for waste, and which reason a wasted piece was given.

CREATE TABLE reason_codes (
  id TEXT PRIMARY KEY CHECK (id GLOB 'reason_*'),
  kind TEXT NOT NULL CHECK (kind IN ('delay', 'waste')),
  code TEXT NOT NULL CHECK (length(code) BETWEEN 1 AND 12),
  words TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 80),
  -- where it stands among those of its kind
  position INTEGER NOT NULL CHECK (position >= 0),
  retired_at TEXT,
  revision INTEGER NOT NULL DEFAULT 1 CHECK (revision > 0),
  -- a code that was retired is never given to something else
  UNIQUE (kind, code)
) STRICT;
CREATE TRIGGER reasons_keep_their_words BEFORE UPDATE ON reason_codes
  WHEN new.id IS NOT old.id OR new.kind IS NOT old.kind OR new.code IS NOT old.code OR new.words IS NOT old.words
  BEGIN SELECT raise(ABORT, 'a reason keeps its code and its words: retire it, and add another'); END;
CREATE TRIGGER reasons_are_kept BEFORE DELETE ON reason_codes
  BEGIN SELECT raise(ABORT, 'reasons are retired, never deleted'); END;

-- Why pieces were wasted, beside the move that says that they were. The newest row of a move counts; NULL in it: not stated after all.
CREATE TABLE move_reasons (
  seq INTEGER PRIMARY KEY,
  move_seq INTEGER NOT NULL REFERENCES piece_moves(seq),
  reason_id TEXT REFERENCES reason_codes(id),
  person_id TEXT NOT NULL REFERENCES people(id),
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX move_reasons_by_move ON move_reasons (move_seq, seq);
CREATE TRIGGER move_reasons_are_never_changed BEFORE UPDATE ON move_reasons
  BEGIN SELECT raise(ABORT, 'reasons of moves are append-only'); END;
CREATE TRIGGER move_reasons_are_never_deleted BEFORE DELETE ON move_reasons
  BEGIN SELECT raise(ABORT, 'reasons of moves are append-only'); END;
CREATE TRIGGER only_what_was_wasted_has_a_reason BEFORE INSERT ON move_reasons
  WHEN NOT EXISTS (SELECT 1 FROM piece_moves WHERE seq = new.move_seq AND act = 'wasted')
    OR (new.reason_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM reason_codes WHERE id = new.reason_id AND kind = 'waste'))
  BEGIN SELECT raise(ABORT, 'a reason for waste belongs to what was wasted'); END;

-- Delays are entries of the record of use; those of a time are found without reading every entry of it.
CREATE INDEX use_entries_of_delays ON use_entries (case_id) WHERE json_extract(act, '$.kind') = 'delay';

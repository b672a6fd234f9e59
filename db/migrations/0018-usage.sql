-- What was used in a case, entered at the table piece by piece; closed once, and corrected after that by further entries only.

CREATE TABLE case_uses (
  case_id TEXT PRIMARY KEY REFERENCES cases(id),
  began_by TEXT NOT NULL REFERENCES people(id),
  began_at TEXT NOT NULL,
  closed_by TEXT REFERENCES people(id),
  closed_at TEXT,
  entry_count INTEGER,
  entry_digest TEXT,
  -- what stayed open as it was closed, as `lib/usage/questions.ts` has it; an empty list: nothing
  questions TEXT CHECK (json_valid(questions)),
  -- what each slot was recorded to hold as it went to the table, as the account of the closed record reads it
  recorded TEXT CHECK (json_valid(recorded)),
  attested TEXT CHECK (json_valid(attested)),
  CHECK ((closed_at IS NULL) = (closed_by IS NULL) AND (closed_at IS NULL) = (entry_digest IS NULL)
    AND (closed_at IS NULL) = (entry_count IS NULL) AND (closed_at IS NULL) = (questions IS NULL)
    AND (closed_at IS NULL) = (attested IS NULL) AND (closed_at IS NULL) = (recorded IS NULL))
) STRICT, WITHOUT ROWID;
CREATE INDEX case_uses_closed ON case_uses (closed_at) WHERE closed_at IS NOT NULL;
CREATE TRIGGER a_closed_record_of_use_stays BEFORE UPDATE ON case_uses
  WHEN old.closed_at IS NOT NULL OR new.case_id IS NOT old.case_id OR new.began_by IS NOT old.began_by OR new.began_at IS NOT old.began_at
  BEGIN SELECT raise(ABORT, 'a record of use is closed once, and never changes'); END;
CREATE TRIGGER records_of_use_are_kept BEFORE DELETE ON case_uses
  BEGIN SELECT raise(ABORT, 'records of use are never deleted'); END;

CREATE TABLE use_entries (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id GLOB 'entry_*'),
  case_id TEXT NOT NULL REFERENCES case_uses(case_id),
  -- what was said, as `lib/usage` reads it
  act TEXT NOT NULL CHECK (json_valid(act)),
  pack_id TEXT REFERENCES packs(id),
  person_id TEXT NOT NULL REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  scan_id TEXT,
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX use_entries_by_case ON use_entries (case_id, seq);
CREATE INDEX use_entries_by_session ON use_entries (session_id);
CREATE INDEX use_entries_by_pack ON use_entries (pack_id) WHERE pack_id IS NOT NULL;
CREATE TRIGGER use_entries_are_never_changed BEFORE UPDATE ON use_entries
  BEGIN SELECT raise(ABORT, 'entries of a record of use are append-only'); END;
CREATE TRIGGER use_entries_are_never_deleted BEFORE DELETE ON use_entries
  BEGIN SELECT raise(ABORT, 'entries of a record of use are append-only'); END;
CREATE TRIGGER a_closed_record_of_use_is_corrected BEFORE INSERT ON use_entries
  WHEN (SELECT closed_at IS NOT NULL FROM case_uses WHERE case_id = new.case_id) AND json_extract(new.act, '$.because') IS NULL
  BEGIN SELECT raise(ABORT, 'a closed record of use is corrected, with the reason why'); END;
-- However many people take the same entry back: it is taken back once.
CREATE UNIQUE INDEX taken_back_once ON use_entries (json_extract(act, '$.entryId')) WHERE json_extract(act, '$.kind') = 'takenBack';

-- What a record of use says of single packs it says at the return too.
CREATE TABLE use_returns (
  return_id TEXT PRIMARY KEY REFERENCES case_returns(id),
  entry_id TEXT NOT NULL REFERENCES use_entries(id)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX use_returns_by_entry ON use_returns (entry_id);
CREATE TRIGGER use_returns_are_never_changed BEFORE UPDATE ON use_returns
  BEGIN SELECT raise(ABORT, 'returns are append-only'); END;
CREATE TRIGGER use_returns_are_never_deleted BEFORE DELETE ON use_returns
  BEGIN SELECT raise(ABORT, 'returns are append-only'); END;

-- A return is never changed. One that was not so is taken back by the entry that corrects it: it stays, and counts for nothing.
CREATE TABLE returns_taken_back (
  return_id TEXT PRIMARY KEY REFERENCES use_returns(return_id),
  entry_id TEXT NOT NULL REFERENCES use_entries(id)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER returns_taken_back_are_never_changed BEFORE UPDATE ON returns_taken_back
  BEGIN SELECT raise(ABORT, 'returns are append-only'); END;
CREATE TRIGGER returns_taken_back_are_never_deleted BEFORE DELETE ON returns_taken_back
  BEGIN SELECT raise(ABORT, 'returns are append-only'); END;

DROP TRIGGER no_more_comes_back_than_went_out;
CREATE TRIGGER no_more_comes_back_than_went_out BEFORE INSERT ON case_returns
  WHEN NOT EXISTS (
    SELECT 1 FROM case_picks pick WHERE pick.id = new.pick_id AND pick.issued_at IS NOT NULL AND pick.quantity >= new.quantity + (
      SELECT coalesce(sum(quantity), 0) FROM case_returns
      WHERE pick_id = new.pick_id AND id NOT IN (SELECT return_id FROM returns_taken_back)))
  BEGIN SELECT raise(ABORT, 'no more comes back than went out'); END;

-- A move that was not so: the record of use that it came of was corrected. It stays in the journal and counts for nothing; what
-- is right follows as moves of its own, and what had left a slot by it is put back there by a move.
CREATE TABLE moves_taken_back (
  move_seq INTEGER PRIMARY KEY REFERENCES piece_moves(seq),
  entry_id TEXT NOT NULL REFERENCES use_entries(id)
) STRICT;
CREATE TRIGGER moves_taken_back_are_never_changed BEFORE UPDATE ON moves_taken_back
  BEGIN SELECT raise(ABORT, 'the journal of pieces is append-only'); END;
CREATE TRIGGER moves_taken_back_are_never_deleted BEFORE DELETE ON moves_taken_back
  BEGIN SELECT raise(ABORT, 'the journal of pieces is append-only'); END;
CREATE TRIGGER only_moves_of_a_record_of_use_are_taken_back BEFORE INSERT ON moves_taken_back
  WHEN NOT EXISTS (SELECT 1 FROM piece_moves move JOIN use_entries entry ON entry.id = move.source WHERE move.seq = new.move_seq)
  BEGIN SELECT raise(ABORT, 'only what a record of use moved is taken back by it'); END;
CREATE TRIGGER usage_of_a_move_taken_back AFTER INSERT ON moves_taken_back
  BEGIN
    UPDATE usage_months SET
      implanted = implanted - (SELECT iif(act = 'implanted', quantity, 0) FROM piece_moves WHERE seq = new.move_seq),
      wasted = wasted - (SELECT iif(act = 'wasted', quantity, 0) FROM piece_moves WHERE seq = new.move_seq),
      not_found = not_found - (SELECT iif(act = 'notFound', quantity, iif(act = 'explained', -quantity, 0))
        FROM piece_moves WHERE seq = new.move_seq)
    WHERE (item_id, month) = (SELECT item_id, substr(done_on, 1, 7) FROM piece_moves WHERE seq = new.move_seq);
  END;
CREATE INDEX piece_moves_by_source ON piece_moves (source) WHERE source IS NOT NULL;

-- The journal as it counts: whoever reads what was used reads this.
CREATE VIEW moves_that_stand AS SELECT * FROM piece_moves WHERE seq NOT IN (SELECT move_seq FROM moves_taken_back);

-- The life of a case's kit: picked, checked by another person, issued, in theatre, back; the counts in theatre by two people,
-- and what stays open after them.

-- What there is to fetch, as it was worked out from the confirmed plan, and how far the kit has come.
CREATE TABLE case_lives (
  case_id TEXT PRIMARY KEY REFERENCES cases(id),
  -- the version of the plan the list follows
  plan_version INTEGER NOT NULL CHECK (plan_version > 0),
  list TEXT NOT NULL CHECK (json_valid(list)),
  list_made_by TEXT REFERENCES people(id),
  list_made_at TEXT NOT NULL,
  picked_by TEXT REFERENCES people(id),
  picked_at TEXT,
  -- why it is finished although something on the list is not there
  picked_note TEXT CHECK (length(picked_note) BETWEEN 1 AND 400),
  checked_by TEXT REFERENCES people(id),
  checked_at TEXT,
  check_id TEXT REFERENCES kit_checks(id),
  issued_by TEXT REFERENCES people(id),
  issued_at TEXT,
  taken_by TEXT REFERENCES people(id),
  taken_at TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((picked_by IS NULL) = (picked_at IS NULL)),
  CHECK ((checked_by IS NULL) = (checked_at IS NULL) AND (checked_by IS NULL) = (check_id IS NULL)),
  CHECK ((issued_by IS NULL) = (issued_at IS NULL)),
  CHECK ((taken_by IS NULL) = (taken_at IS NULL)),
  CHECK (checked_at IS NULL OR picked_at IS NOT NULL),
  CHECK (issued_at IS NULL OR checked_at IS NOT NULL),
  CHECK (taken_at IS NULL OR issued_at IS NOT NULL)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER an_issued_kit_stays BEFORE UPDATE ON case_lives
  WHEN old.issued_at IS NOT NULL AND (new.issued_at IS NOT old.issued_at OR new.issued_by IS NOT old.issued_by
    OR new.list IS NOT old.list OR new.plan_version IS NOT old.plan_version OR new.picked_at IS NOT old.picked_at
    OR new.checked_at IS NOT old.checked_at OR (old.taken_at IS NOT NULL AND new.taken_at IS NOT old.taken_at))
  BEGIN SELECT raise(ABORT, 'a kit that has left the store is not picked again'); END;
CREATE TRIGGER case_lives_are_kept BEFORE DELETE ON case_lives
  BEGIN SELECT raise(ABORT, 'the life of a kit is kept'); END;

-- One thing taken off its place for a case: a set, or single packs of one heap. Its id is made where it was picked.
CREATE TABLE case_picks (
  id TEXT PRIMARY KEY CHECK (id GLOB 'pick_*'),
  case_id TEXT NOT NULL REFERENCES cases(id),
  set_id TEXT REFERENCES sets(id),
  stock_id TEXT REFERENCES stock(id),
  item_id TEXT REFERENCES items(id),
  -- the sterile barrier its label named, where one was read
  pack_id TEXT REFERENCES packs(id),
  lot TEXT,
  use_by TEXT,
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  place_id TEXT REFERENCES places(id),
  -- the promise that was made with it; one made before stays when the set is put back
  promise_id TEXT,
  -- 'sent': a set sent to the case by itself
  how TEXT NOT NULL CHECK (how IN ('scan', 'touch', 'sent')),
  scan_id TEXT,
  picked_by TEXT NOT NULL REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  put_back_id TEXT UNIQUE,
  put_back_by TEXT REFERENCES people(id),
  put_back_at TEXT,
  issued_by TEXT REFERENCES people(id),
  issued_at TEXT,
  CHECK ((set_id IS NULL) <> (stock_id IS NULL)),
  CHECK ((stock_id IS NULL) = (item_id IS NULL)),
  CHECK (set_id IS NULL OR quantity = 1),
  CHECK ((put_back_at IS NULL) = (put_back_by IS NULL) AND (put_back_at IS NULL) = (put_back_id IS NULL)),
  CHECK ((issued_at IS NULL) = (issued_by IS NULL)),
  CHECK (put_back_at IS NULL OR issued_at IS NULL)
) STRICT;
CREATE INDEX case_picks_by_case ON case_picks (case_id, done_at);
CREATE INDEX case_picks_by_session ON case_picks (session_id);
CREATE INDEX case_picks_by_set ON case_picks (set_id) WHERE set_id IS NOT NULL;
CREATE INDEX case_picks_standing ON case_picks (stock_id) WHERE stock_id IS NOT NULL AND put_back_at IS NULL AND issued_at IS NULL;
-- However many people pick at once: a set stands on one trolley, and so does a labelled pouch.
CREATE UNIQUE INDEX one_kit_for_a_set ON case_picks (set_id)
  WHERE set_id IS NOT NULL AND put_back_at IS NULL AND issued_at IS NULL;
CREATE UNIQUE INDEX one_kit_for_a_pouch ON case_picks (pack_id)
  WHERE stock_id IS NOT NULL AND pack_id IS NOT NULL AND put_back_at IS NULL AND issued_at IS NULL;
CREATE TRIGGER what_was_picked_is_kept BEFORE UPDATE ON case_picks
  WHEN new.id IS NOT old.id OR new.case_id IS NOT old.case_id OR new.set_id IS NOT old.set_id OR new.stock_id IS NOT old.stock_id
    OR new.quantity IS NOT old.quantity OR new.picked_by IS NOT old.picked_by OR new.done_at IS NOT old.done_at
    OR old.put_back_at IS NOT NULL OR old.issued_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'what was picked is put back once or issued once, and never changes'); END;
CREATE TRIGGER picks_are_never_deleted BEFORE DELETE ON case_picks
  BEGIN SELECT raise(ABORT, 'picks are never deleted'); END;
CREATE TRIGGER no_more_is_picked_than_lies_there BEFORE INSERT ON case_picks
  WHEN new.stock_id IS NOT NULL AND new.issued_at IS NULL AND new.quantity + (
    SELECT coalesce(sum(quantity), 0) FROM case_picks
    WHERE stock_id = new.stock_id AND put_back_at IS NULL AND issued_at IS NULL
  ) > (SELECT quantity FROM stock WHERE id = new.stock_id)
  BEGIN SELECT raise(ABORT, 'more would be picked than lies there'); END;
CREATE TRIGGER what_is_picked_stays_for_its_case BEFORE UPDATE OF quantity ON stock
  WHEN new.quantity < old.quantity AND new.quantity < (
    SELECT coalesce(sum(quantity), 0) FROM case_picks
    WHERE stock_id = new.id AND put_back_at IS NULL AND issued_at IS NULL)
  BEGIN SELECT raise(ABORT, 'what is picked for a case is not taken for anything else'); END;

-- Another person scans the picked kit again without seeing what was picked.
CREATE TABLE kit_checks (
  id TEXT PRIMARY KEY CHECK (id GLOB 'check_*'),
  case_id TEXT NOT NULL REFERENCES cases(id),
  person_id TEXT NOT NULL REFERENCES people(id),
  workstation_id TEXT REFERENCES workstations(id),
  began_at TEXT NOT NULL,
  closed_at TEXT,
  abandoned_at TEXT,
  -- where the two differ, when it was closed; an empty list: nowhere
  differences TEXT CHECK (json_valid(differences)),
  CHECK ((closed_at IS NULL) = (differences IS NULL)),
  CHECK (closed_at IS NULL OR abandoned_at IS NULL)
) STRICT;
CREATE UNIQUE INDEX one_open_check_of_a_person ON kit_checks (case_id, person_id) WHERE closed_at IS NULL AND abandoned_at IS NULL;
CREATE TRIGGER a_closed_check_stays BEFORE UPDATE ON kit_checks
  WHEN old.closed_at IS NOT NULL OR old.abandoned_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'a closed check never changes'); END;
CREATE TRIGGER kit_checks_are_kept BEFORE DELETE ON kit_checks
  BEGIN SELECT raise(ABORT, 'checks are never deleted'); END;
CREATE TABLE kit_check_entries (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id GLOB 'entry_*'),
  check_id TEXT NOT NULL REFERENCES kit_checks(id),
  -- what was seen, as `lib/caseLife` reads it, or which entry was a mistake
  act TEXT NOT NULL CHECK (json_valid(act)),
  person_id TEXT NOT NULL REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  scan_id TEXT,
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX kit_check_entries_by_check ON kit_check_entries (check_id, seq);
CREATE INDEX kit_check_entries_by_session ON kit_check_entries (session_id);
CREATE TRIGGER kit_check_entries_are_never_changed BEFORE UPDATE ON kit_check_entries
  BEGIN SELECT raise(ABORT, 'entries of a check are append-only'); END;
CREATE TRIGGER kit_check_entries_are_never_deleted BEFORE DELETE ON kit_check_entries
  BEGIN SELECT raise(ABORT, 'entries of a check are append-only'); END;
CREATE TRIGGER a_closed_check_takes_no_entry BEFORE INSERT ON kit_check_entries
  WHEN (SELECT closed_at IS NOT NULL OR abandoned_at IS NOT NULL FROM kit_checks WHERE id = new.check_id)
  BEGIN SELECT raise(ABORT, 'a closed check takes no entry'); END;
-- Nobody checks what they picked themselves.
CREATE TRIGGER another_person_checks BEFORE UPDATE OF checked_by ON case_lives
  WHEN new.checked_by IS NOT NULL AND (new.checked_by = new.picked_by OR EXISTS (
    SELECT 1 FROM case_picks WHERE case_id = new.case_id AND picked_by = new.checked_by AND put_back_at IS NULL))
  BEGIN SELECT raise(ABORT, 'nobody checks what they picked themselves'); END;

-- What became of what was issued. The sum over a pick never exceeds what it took out.
CREATE TABLE case_returns (
  id TEXT PRIMARY KEY CHECK (id GLOB 'return_*'),
  pick_id TEXT NOT NULL REFERENCES case_picks(id),
  outcome TEXT NOT NULL CHECK (outcome IN ('cameBack', 'returnedUnopened', 'opened', 'damaged', 'notFound')),
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  note TEXT CHECK (length(note) BETWEEN 1 AND 400),
  -- of what came back unopened: who judged its barrier, and what they said
  attested TEXT CHECK (json_valid(attested)),
  person_id TEXT REFERENCES people(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  CHECK ((outcome = 'returnedUnopened') = (attested IS NOT NULL))
) STRICT;
CREATE INDEX case_returns_by_pick ON case_returns (pick_id);
CREATE TRIGGER returns_are_never_changed BEFORE UPDATE ON case_returns
  BEGIN SELECT raise(ABORT, 'returns are append-only'); END;
CREATE TRIGGER returns_are_never_deleted BEFORE DELETE ON case_returns
  BEGIN SELECT raise(ABORT, 'returns are append-only'); END;
CREATE TRIGGER no_more_comes_back_than_went_out BEFORE INSERT ON case_returns
  WHEN NOT EXISTS (
    SELECT 1 FROM case_picks pick WHERE pick.id = new.pick_id AND pick.issued_at IS NOT NULL AND pick.quantity >= new.quantity + (
      SELECT coalesce(sum(quantity), 0) FROM case_returns WHERE pick_id = new.pick_id))
  BEGIN SELECT raise(ABORT, 'no more comes back than went out'); END;

-- A set nobody opened goes back to the store, where a person has judged its barrier; the load it was sterilised in must
-- still be accepted, as for every other way there.
INSERT INTO legal_steps VALUES ('inTheatre', 'inSterileStore');

-- Counts in theatre, before and after, by two people together.
CREATE TABLE theatre_counts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'theatreCount_*'),
  case_id TEXT NOT NULL REFERENCES cases(id),
  moment TEXT NOT NULL CHECK (moment IN ('first', 'final')),
  person_id TEXT NOT NULL REFERENCES people(id),
  second_person_id TEXT REFERENCES people(id),
  workstation_id TEXT REFERENCES workstations(id),
  began_at TEXT NOT NULL,
  closed_at TEXT,
  entry_count INTEGER,
  entry_digest TEXT,
  abandoned_at TEXT,
  CHECK ((closed_at IS NULL) = (entry_digest IS NULL)),
  CHECK ((closed_at IS NULL) = (second_person_id IS NULL)),
  CHECK (second_person_id IS NULL OR second_person_id <> person_id)
) STRICT;
CREATE INDEX theatre_counts_by_case ON theatre_counts (case_id, began_at);
CREATE UNIQUE INDEX one_open_theatre_count ON theatre_counts (case_id) WHERE closed_at IS NULL AND abandoned_at IS NULL;
CREATE TRIGGER a_closed_theatre_count_stays BEFORE UPDATE ON theatre_counts
  WHEN old.closed_at IS NOT NULL OR old.abandoned_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'a closed count in theatre never changes'); END;
CREATE TRIGGER theatre_counts_are_kept BEFORE DELETE ON theatre_counts
  BEGIN SELECT raise(ABORT, 'counts in theatre are never deleted'); END;
CREATE TABLE theatre_count_entries (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id GLOB 'entry_*'),
  count_id TEXT NOT NULL REFERENCES theatre_counts(id),
  -- what was said, as `lib/theatreCounts` reads it
  act TEXT NOT NULL CHECK (json_valid(act)),
  person_id TEXT NOT NULL REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX theatre_count_entries_by_count ON theatre_count_entries (count_id, seq);
CREATE INDEX theatre_count_entries_by_session ON theatre_count_entries (session_id);
CREATE TRIGGER theatre_count_entries_are_never_changed BEFORE UPDATE ON theatre_count_entries
  BEGIN SELECT raise(ABORT, 'entries of a count in theatre are append-only'); END;
CREATE TRIGGER theatre_count_entries_are_never_deleted BEFORE DELETE ON theatre_count_entries
  BEGIN SELECT raise(ABORT, 'entries of a count in theatre are append-only'); END;
CREATE TRIGGER a_closed_theatre_count_takes_no_entry BEFORE INSERT ON theatre_count_entries
  WHEN (SELECT closed_at IS NOT NULL OR abandoned_at IS NOT NULL FROM theatre_counts WHERE id = new.count_id)
  BEGIN SELECT raise(ABORT, 'a closed count in theatre takes no entry'); END;

-- A figure that did not come out. It stays open, wherever the set goes, until two people settle it.
CREATE TABLE theatre_questions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'question_*'),
  case_id TEXT NOT NULL REFERENCES cases(id),
  count_id TEXT NOT NULL REFERENCES theatre_counts(id),
  -- the line of a set, or an added item by its name
  set_id TEXT REFERENCES sets(id),
  line_id TEXT REFERENCES configuration_lines(id),
  item_id TEXT REFERENCES items(id),
  thing TEXT NOT NULL CHECK (length(thing) BETWEEN 1 AND 200),
  expected INTEGER NOT NULL CHECK (expected >= 0),
  counted INTEGER NOT NULL CHECK (counted >= 0),
  opened_at TEXT NOT NULL,
  settled_by TEXT REFERENCES people(id),
  settled_with TEXT REFERENCES people(id),
  settled_at TEXT,
  settled_as TEXT CHECK (settled_as IN ('accountedFor', 'notFound')),
  settled_because TEXT CHECK (length(settled_because) BETWEEN 1 AND 400),
  CHECK (expected <> counted),
  CHECK ((set_id IS NULL) = (line_id IS NULL)),
  CHECK ((settled_at IS NULL) = (settled_by IS NULL) AND (settled_at IS NULL) = (settled_with IS NULL)
    AND (settled_at IS NULL) = (settled_as IS NULL) AND (settled_at IS NULL) = (settled_because IS NULL)),
  CHECK (settled_by IS NULL OR settled_by <> settled_with)
) STRICT;
CREATE INDEX theatre_questions_by_case ON theatre_questions (case_id, opened_at);
CREATE INDEX theatre_questions_open ON theatre_questions (set_id) WHERE settled_at IS NULL;
CREATE TRIGGER questions_keep_their_figures BEFORE UPDATE ON theatre_questions
  WHEN old.settled_at IS NOT NULL OR new.expected IS NOT old.expected OR new.counted IS NOT old.counted
    OR new.thing IS NOT old.thing OR new.set_id IS NOT old.set_id OR new.line_id IS NOT old.line_id
    OR new.case_id IS NOT old.case_id OR new.count_id IS NOT old.count_id OR new.opened_at IS NOT old.opened_at
  BEGIN SELECT raise(ABORT, 'a question keeps its figures and is settled once'); END;
CREATE TRIGGER questions_are_never_deleted BEFORE DELETE ON theatre_questions
  BEGIN SELECT raise(ABORT, 'questions are never deleted'); END;

-- What was done about an open question; append-only. Nothing among it settles it.
CREATE TABLE theatre_question_acts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'entry_*'),
  question_id TEXT NOT NULL REFERENCES theatre_questions(id),
  kind TEXT NOT NULL CHECK (kind IN ('found', 'xRayAsked', 'discarded', 'stillOpen', 'countedAgain')),
  pieces INTEGER CHECK (pieces >= 0),
  note TEXT CHECK (length(note) BETWEEN 1 AND 400),
  person_id TEXT NOT NULL REFERENCES people(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  CHECK ((kind IN ('found', 'discarded', 'countedAgain')) = (pieces IS NOT NULL))
) STRICT;
CREATE INDEX theatre_question_acts_by_question ON theatre_question_acts (question_id, done_at);
CREATE TRIGGER question_acts_are_never_changed BEFORE UPDATE ON theatre_question_acts
  BEGIN SELECT raise(ABORT, 'what was done about a question is append-only'); END;
CREATE TRIGGER question_acts_are_never_deleted BEFORE DELETE ON theatre_question_acts
  BEGIN SELECT raise(ABORT, 'what was done about a question is append-only'); END;
CREATE TRIGGER a_settled_question_rests BEFORE INSERT ON theatre_question_acts
  WHEN (SELECT settled_at IS NOT NULL FROM theatre_questions WHERE id = new.question_id)
  BEGIN SELECT raise(ABORT, 'a settled question rests'); END;

-- A scan may be made in the picking or the check of a case. What contexts there are is the program's to say.
CREATE TABLE new_scans (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id GLOB 'scan_*'),
  -- a badge never gets here, whatever the program sends
  text TEXT NOT NULL CHECK (length(text) BETWEEN 1 AND 1000 AND upper(text) NOT GLOB '*KWBADGE*'),
  how TEXT NOT NULL CHECK (how IN ('scanner', 'camera', 'typed')),
  separators TEXT NOT NULL CHECK (separators IN ('mayBeLost', 'sent')),
  person_id TEXT NOT NULL REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  workstation_id TEXT REFERENCES workstations(id),
  context_kind TEXT NOT NULL CHECK (length(context_kind) BETWEEN 1 AND 40),
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
INSERT INTO new_scans (seq, id, text, how, separators, person_id, session_id, workstation_id, context_kind, context_id, thing,
    verdict, meaning, says, sentence, before_id, done_at, entered_at, late)
  SELECT seq, id, text, how, separators, person_id, session_id, workstation_id, context_kind, context_id, thing,
    verdict, meaning, says, sentence, before_id, done_at, entered_at, late FROM scans;
DROP TABLE scans;
ALTER TABLE new_scans RENAME TO scans;
CREATE INDEX scans_by_thing ON scans (context_kind, context_id, thing, seq) WHERE thing IS NOT NULL;
CREATE INDEX scans_by_person ON scans (person_id, seq);
CREATE INDEX scans_by_workstation ON scans (workstation_id, seq) WHERE workstation_id IS NOT NULL;
CREATE INDEX scans_by_session ON scans (session_id);
CREATE TRIGGER scans_are_never_changed BEFORE UPDATE ON scans
  BEGIN SELECT raise(ABORT, 'scans are append-only'); END;
CREATE TRIGGER scans_are_never_deleted BEFORE DELETE ON scans
  BEGIN SELECT raise(ABORT, 'scans are append-only'); END;

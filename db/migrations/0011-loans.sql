-- Loan sets, from the request to their return: lenders, loans, content lists, counts, questions, and claims.

CREATE TABLE lenders (
  id TEXT PRIMARY KEY CHECK (id GLOB 'lender_*'),
  name TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 80),
  contact TEXT,
  phone TEXT,
  email TEXT,
  address TEXT,
  note TEXT,
  withdrawn_at TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE TRIGGER lenders_are_kept BEFORE DELETE ON lenders
  BEGIN SELECT raise(ABORT, 'lenders are never deleted'); END;

CREATE TABLE loans (
  id TEXT PRIMARY KEY CHECK (id GLOB 'loan_*'),
  number TEXT NOT NULL UNIQUE CHECK (number GLOB 'LN-[0-9][0-9][0-9][0-9]*'),
  lender_id TEXT NOT NULL REFERENCES lenders(id),
  state TEXT NOT NULL CHECK (state IN ('asked', 'refused', 'calledOff', 'confirmed', 'here', 'inService', 'goingBack', 'goneBack')),
  -- for one case, or for a period of whole days by the hospital's calendar
  case_id TEXT REFERENCES cases(id),
  from_date TEXT,
  until_date TEXT,
  asked_for TEXT NOT NULL CHECK (length(asked_for) BETWEEN 1 AND 400),
  configuration_id TEXT REFERENCES configurations(id),
  asked_by TEXT NOT NULL REFERENCES people(id),
  asked_at TEXT NOT NULL,
  -- what the lender said: who, when it comes, when it must be back
  answered_by TEXT,
  answered_at TEXT,
  expected_at TEXT,
  back_by TEXT,
  -- when it had to be here, fixed as it arrived, with the rule it was worked out by; NULL: not established
  due_at TEXT,
  due_rule TEXT CHECK (due_rule IS NULL OR json_valid(due_rule)),
  arrived_at TEXT,
  brought_by TEXT,
  trays_arrived INTEGER CHECK (trays_arrived BETWEEN 1 AND 26),
  place_id TEXT REFERENCES places(id),
  -- NULL: nobody has looked yet
  declaration TEXT CHECK (declaration IN ('present', 'missing')),
  instructions TEXT CHECK (instructions IN ('present', 'missing')),
  papers_by TEXT REFERENCES people(id),
  papers_at TEXT,
  unpacked_at TEXT,
  -- what we declare of it as it leaves: how, who, when, with which proof
  our_declaration TEXT CHECK (our_declaration IS NULL OR json_valid(our_declaration)),
  collected_by TEXT,
  collected_at TEXT,
  handed_over TEXT CHECK (handed_over IS NULL OR json_valid(handed_over)),
  ended_because TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((from_date IS NULL) = (until_date IS NULL)),
  CHECK ((case_id IS NULL) = (from_date IS NOT NULL)),
  CHECK (from_date IS NULL OR from_date <= until_date),
  CHECK (state NOT IN ('here', 'inService', 'goingBack', 'goneBack') OR arrived_at IS NOT NULL),
  CHECK (state <> 'inService' OR unpacked_at IS NOT NULL),
  CHECK (state NOT IN ('refused', 'calledOff') OR ended_because IS NOT NULL)
) STRICT;
CREATE INDEX loans_by_lender ON loans (lender_id);
CREATE INDEX loans_by_case ON loans (case_id);
CREATE INDEX loans_by_state ON loans (state);
CREATE TRIGGER loans_are_kept BEFORE DELETE ON loans
  BEGIN SELECT raise(ABORT, 'loans are never deleted'); END;

CREATE TABLE legal_loan_states (from_state TEXT NOT NULL, to_state TEXT NOT NULL, PRIMARY KEY (from_state, to_state)) STRICT, WITHOUT ROWID;
INSERT INTO legal_loan_states VALUES
  ('asked', 'confirmed'), ('asked', 'refused'), ('asked', 'calledOff'),
  ('confirmed', 'here'), ('confirmed', 'refused'), ('confirmed', 'calledOff'),
  ('here', 'inService'), ('here', 'goingBack'),
  ('inService', 'goingBack'),
  ('goingBack', 'goneBack');
CREATE TRIGGER only_legal_loan_states BEFORE UPDATE OF state ON loans
  WHEN old.state <> new.state
    AND NOT EXISTS (SELECT 1 FROM legal_loan_states WHERE from_state = old.state AND to_state = new.state)
  BEGIN SELECT raise(ABORT, 'a loan does not go from that state to this one'); END;
CREATE TRIGGER what_was_due_stays BEFORE UPDATE OF due_at, arrived_at ON loans
  WHEN old.arrived_at IS NOT NULL AND (new.due_at IS NOT old.due_at OR new.arrived_at IS NOT old.arrived_at)
  BEGIN SELECT raise(ABORT, 'when a loan was due and came is not changed afterwards'); END;

-- Every change of a loan's state, never changed.
CREATE TABLE loan_steps (
  seq INTEGER PRIMARY KEY,
  loan_id TEXT NOT NULL REFERENCES loans(id),
  from_state TEXT,
  state TEXT NOT NULL,
  note TEXT,
  person_id TEXT NOT NULL REFERENCES people(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX loan_steps_by_loan ON loan_steps (loan_id, seq);
CREATE TRIGGER loan_steps_are_never_changed BEFORE UPDATE ON loan_steps
  BEGIN SELECT raise(ABORT, 'steps of a loan are append-only'); END;
CREATE TRIGGER loan_steps_are_never_deleted BEFORE DELETE ON loan_steps
  BEGIN SELECT raise(ABORT, 'steps of a loan are append-only'); END;

-- What the lender says is in it. `item_id` is NULL where nothing of the catalogue is it: the line stays as written.
CREATE TABLE loan_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'loanLine_*'),
  loan_id TEXT NOT NULL REFERENCES loans(id),
  position INTEGER NOT NULL CHECK (position > 0),
  tray INTEGER NOT NULL CHECK (tray BETWEEN 1 AND 26),
  item_id TEXT REFERENCES items(id),
  code TEXT,
  gtin TEXT CHECK (gtin IS NULL OR length(gtin) = 14),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  quantity INTEGER NOT NULL CHECK (quantity BETWEEN 1 AND 999),
  implant INTEGER CHECK (implant IN (0, 1)),
  must_have_class INTEGER CHECK (must_have_class BETWEEN 1 AND 4),
  UNIQUE (loan_id, position)
) STRICT;

CREATE TABLE loan_trays (
  loan_id TEXT NOT NULL REFERENCES loans(id),
  tray INTEGER NOT NULL CHECK (tray BETWEEN 1 AND 26),
  grams_in INTEGER CHECK (grams_in BETWEEN 1 AND 60000),
  weighed_in_by TEXT REFERENCES people(id),
  weighed_in_at TEXT,
  grams_out INTEGER CHECK (grams_out BETWEEN 1 AND 60000),
  weighed_out_by TEXT REFERENCES people(id),
  weighed_out_at TEXT,
  -- the ownership tag on it is the code of the set it becomes
  tag TEXT,
  set_id TEXT UNIQUE REFERENCES sets(id),
  tagged_by TEXT REFERENCES people(id),
  tagged_at TEXT,
  PRIMARY KEY (loan_id, tray),
  CHECK ((grams_in IS NULL) = (weighed_in_by IS NULL)),
  CHECK ((tag IS NULL) = (set_id IS NULL))
) STRICT, WITHOUT ROWID;

-- Counts against the list, as it came and as it goes. Never changed; the figures of both people are kept.
CREATE TABLE loan_counts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'loanCount_*'),
  loan_id TEXT NOT NULL REFERENCES loans(id),
  stage TEXT NOT NULL CHECK (stage IN ('in', 'out')),
  purpose TEXT NOT NULL CHECK (purpose IN ('count', 'check', 'settle')),
  person_id TEXT NOT NULL REFERENCES people(id),
  counted_at TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX one_loan_count_of_a_purpose ON loan_counts (loan_id, stage, purpose);
CREATE TABLE loan_count_lines (
  count_id TEXT NOT NULL REFERENCES loan_counts(id),
  line_id TEXT NOT NULL REFERENCES loan_lines(id),
  sound INTEGER NOT NULL CHECK (sound BETWEEN 0 AND 9999),
  damaged INTEGER NOT NULL CHECK (damaged BETWEEN 0 AND 9999),
  PRIMARY KEY (count_id, line_id)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER loan_counts_are_never_changed BEFORE UPDATE ON loan_counts
  BEGIN SELECT raise(ABORT, 'counts of a loan are append-only'); END;
CREATE TRIGGER loan_counts_are_never_deleted BEFORE DELETE ON loan_counts
  BEGIN SELECT raise(ABORT, 'counts of a loan are append-only'); END;
CREATE TRIGGER loan_figures_are_never_changed BEFORE UPDATE ON loan_count_lines
  BEGIN SELECT raise(ABORT, 'counts of a loan are append-only'); END;
CREATE TRIGGER loan_figures_are_never_deleted BEFORE DELETE ON loan_count_lines
  BEGIN SELECT raise(ABORT, 'counts of a loan are append-only'); END;
CREATE TRIGGER loans_are_checked_by_another BEFORE INSERT ON loan_counts
  WHEN new.purpose = 'check' AND NOT EXISTS (SELECT 1 FROM loan_counts first WHERE first.loan_id = new.loan_id
    AND first.stage = new.stage AND first.purpose = 'count' AND first.person_id <> new.person_id)
  BEGIN SELECT raise(ABORT, 'a count is checked by another person'); END;

-- The list is what was counted against: it stands once there is a count, or a set made from it.
CREATE TRIGGER counted_lists_stand_insert BEFORE INSERT ON loan_lines
  WHEN EXISTS (SELECT 1 FROM loan_counts WHERE loan_id = new.loan_id)
    OR EXISTS (SELECT 1 FROM loan_trays WHERE loan_id = new.loan_id AND set_id IS NOT NULL)
  BEGIN SELECT raise(ABORT, 'the list stands: it was counted against'); END;
CREATE TRIGGER counted_lists_stand_update BEFORE UPDATE ON loan_lines
  WHEN EXISTS (SELECT 1 FROM loan_counts WHERE loan_id = old.loan_id)
    OR EXISTS (SELECT 1 FROM loan_trays WHERE loan_id = old.loan_id AND set_id IS NOT NULL)
  BEGIN SELECT raise(ABORT, 'the list stands: it was counted against'); END;
CREATE TRIGGER counted_lists_stand_delete BEFORE DELETE ON loan_lines
  WHEN EXISTS (SELECT 1 FROM loan_counts WHERE loan_id = old.loan_id)
    OR EXISTS (SELECT 1 FROM loan_trays WHERE loan_id = old.loan_id AND set_id IS NOT NULL)
  BEGIN SELECT raise(ABORT, 'the list stands: it was counted against'); END;

-- What went into a case and does not go back to the lender.
CREATE TABLE loan_uses (
  line_id TEXT NOT NULL REFERENCES loan_lines(id),
  case_id TEXT NOT NULL REFERENCES cases(id),
  outcome TEXT NOT NULL CHECK (outcome IN ('implanted', 'openedNotImplanted')),
  loan_id TEXT NOT NULL REFERENCES loans(id),
  quantity INTEGER NOT NULL CHECK (quantity BETWEEN 0 AND 999),
  recorded_by TEXT NOT NULL REFERENCES people(id),
  recorded_at TEXT NOT NULL,
  PRIMARY KEY (line_id, case_id, outcome)
) STRICT, WITHOUT ROWID;
CREATE INDEX loan_uses_by_loan ON loan_uses (loan_id);

-- A question put to one person by name. Nobody else answers it, and it is answered once.
CREATE TABLE loan_questions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'loanQuestion_*'),
  loan_id TEXT NOT NULL REFERENCES loans(id),
  kind TEXT NOT NULL CHECK (kind IN ('acceptLate', 'useWithout')),
  asked_of TEXT NOT NULL REFERENCES people(id),
  asked_by TEXT NOT NULL REFERENCES people(id),
  asked_at TEXT NOT NULL,
  words TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 400),
  answer TEXT CHECK (answer IN ('yes', 'no')),
  answer_words TEXT,
  answered_at TEXT,
  CHECK ((answer IS NULL) = (answered_at IS NULL))
) STRICT;
CREATE INDEX loan_questions_by_loan ON loan_questions (loan_id);
CREATE UNIQUE INDEX one_open_loan_question ON loan_questions (loan_id, kind) WHERE answer IS NULL;
CREATE TRIGGER loan_answers_stand BEFORE UPDATE ON loan_questions
  WHEN old.answer IS NOT NULL OR new.asked_of IS NOT old.asked_of OR new.words IS NOT old.words OR new.kind IS NOT old.kind
  BEGIN SELECT raise(ABORT, 'a question is answered once, by the person asked'); END;

-- What is not as it should be, and what came of saying so. Nothing closes one but a person.
CREATE TABLE loan_claims (
  id TEXT PRIMARY KEY CHECK (id GLOB 'loanClaim_*'),
  loan_id TEXT NOT NULL REFERENCES loans(id),
  line_id TEXT NOT NULL REFERENCES loan_lines(id),
  stage TEXT NOT NULL CHECK (stage IN ('in', 'out')),
  kind TEXT NOT NULL CHECK (kind IN ('notFound', 'damaged')),
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  -- where it was last there: at which step, and when
  last_there TEXT NOT NULL CHECK (json_valid(last_there)),
  words TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 400),
  opened_by TEXT NOT NULL REFERENCES people(id),
  opened_at TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('open', 'agreed', 'disputed', 'withdrawn')),
  said_by TEXT,
  said_words TEXT,
  settled_by TEXT REFERENCES people(id),
  settled_at TEXT,
  CHECK ((state = 'open') = (settled_at IS NULL)),
  UNIQUE (line_id, stage, kind)
) STRICT;
CREATE INDEX loan_claims_by_loan ON loan_claims (loan_id);
CREATE TRIGGER loan_claims_are_kept BEFORE DELETE ON loan_claims
  BEGIN SELECT raise(ABORT, 'claims are never deleted'); END;
-- a disputed claim may still be agreed on or withdrawn; what is agreed or withdrawn is over
CREATE TRIGGER settled_claims_stand BEFORE UPDATE ON loan_claims
  WHEN old.state IN ('agreed', 'withdrawn') OR new.quantity IS NOT old.quantity OR new.last_there IS NOT old.last_there
    OR new.state = 'open'
  BEGIN SELECT raise(ABORT, 'a claim that is settled stands'); END;

-- Without a declaration, written instructions and a finished unpacking, a tray on loan goes nowhere.
CREATE TRIGGER loans_go_on_with_their_papers BEFORE UPDATE OF step ON sets
  WHEN old.step <> new.step AND new.step NOT IN ('held', 'comingBack') AND EXISTS (
    SELECT 1 FROM loan_trays JOIN loans ON loans.id = loan_trays.loan_id
    WHERE loan_trays.set_id = new.id AND (loans.declaration IS NOT 'present' OR loans.instructions IS NOT 'present'
      OR loans.unpacked_at IS NULL))
  BEGIN SELECT raise(ABORT, 'a loan goes on with its declaration and instructions, once it is unpacked'); END;
-- What is to go back is not used any more, and what is declared stays as it was declared.
CREATE TRIGGER what_goes_back_is_not_used BEFORE UPDATE OF step ON sets
  WHEN old.step <> new.step AND new.step <> 'held' AND EXISTS (
    SELECT 1 FROM loan_trays JOIN loans ON loans.id = loan_trays.loan_id
    WHERE loan_trays.set_id = new.id AND (loans.our_declaration IS NOT NULL
      OR (new.step = 'inTheatre' AND loans.state = 'goingBack')))
  BEGIN SELECT raise(ABORT, 'a loan that goes back is not used any more'); END;
-- It leaves with our declaration, into somebody's hands, and takes no further part here.
CREATE TRIGGER loans_leave_signed BEFORE UPDATE OF state ON loans
  WHEN new.state = 'goneBack' AND old.state <> 'goneBack' AND (new.our_declaration IS NULL OR new.collected_by IS NULL
    OR new.collected_at IS NULL OR EXISTS (SELECT 1 FROM loan_trays JOIN sets ON sets.id = loan_trays.set_id
      WHERE loan_trays.loan_id = new.id AND sets.withdrawn_at IS NULL))
  BEGIN SELECT raise(ABORT, 'a loan leaves declared, signed for, and out of service here'); END;
CREATE TRIGGER loans_stay_away BEFORE UPDATE OF withdrawn_at ON sets
  WHEN old.withdrawn_at IS NOT NULL AND new.withdrawn_at IS NULL AND EXISTS (
    SELECT 1 FROM loan_trays JOIN loans ON loans.id = loan_trays.loan_id
    WHERE loan_trays.set_id = new.id AND loans.state = 'goneBack')
  BEGIN SELECT raise(ABORT, 'a loan that has gone back is not brought back into service: ask for it again'); END;

-- A kind made for a tray on loan is the lender's, not ours: it goes out of use with the tray, and stays so.
ALTER TABLE configurations ADD COLUMN loan_id TEXT REFERENCES loans(id);
DROP TRIGGER withdrawn_by_two_people;
CREATE TRIGGER withdrawn_by_two_people BEFORE UPDATE OF withdrawn_at ON configurations
  WHEN new.withdrawn_at IS NOT old.withdrawn_at
    AND NOT (new.withdrawn_at IS NOT NULL AND old.withdrawn_at IS NULL
      AND EXISTS (SELECT 1 FROM loans WHERE id = new.loan_id AND state IN ('goingBack', 'goneBack')))
    AND NOT EXISTS (
      SELECT 1 FROM configuration_requests WHERE configuration_id = new.id AND decision = 'agreed'
        AND kind = CASE WHEN new.withdrawn_at IS NULL THEN 'bringBack' ELSE 'withdraw' END
        AND decided_at >= coalesce(new.withdrawn_at, old.withdrawn_at))
  BEGIN SELECT raise(ABORT, 'a configuration goes out of use, and comes back, by two people'); END;
CREATE TRIGGER a_kind_stays_its_loans BEFORE UPDATE OF loan_id ON configurations WHEN new.loan_id IS NOT old.loan_id
  BEGIN SELECT raise(ABORT, 'whose kind it is never changes'); END;

-- An emergency: which sets were taken for a case at once, what it took from others, when sets went to theatre and when that was
-- recorded, and what could not be answered then.
CREATE TABLE emergencies (
  case_id TEXT PRIMARY KEY REFERENCES cases(id),
  -- a saved start, a plan, or 'unknown': the plan was not known yet
  construct_from TEXT NOT NULL CHECK (construct_from = 'unknown' OR construct_from GLOB 'start_*' OR construct_from GLOB 'plan_*'),
  -- the construct as it was looked at; NULL where it was not known
  construct TEXT CHECK (json_valid(construct)),
  needed_at TEXT NOT NULL,
  -- single packs that go with the sets
  packs TEXT NOT NULL CHECK (json_valid(packs)),
  -- which cases lost what by it and what they got instead, as it was shown and confirmed
  hits TEXT NOT NULL CHECK (json_valid(hits)),
  happened_at TEXT NOT NULL,
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL REFERENCES people(id),
  CHECK ((construct IS NULL) = (construct_from = 'unknown')),
  CHECK (happened_at <= recorded_at)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER emergencies_stay BEFORE UPDATE ON emergencies
  BEGIN SELECT raise(ABORT, 'what was taken for an emergency stays on record as it was'); END;
CREATE TRIGGER emergencies_are_kept BEFORE DELETE ON emergencies
  BEGIN SELECT raise(ABORT, 'what was taken for an emergency stays on record'); END;

CREATE TABLE emergency_sets (
  case_id TEXT NOT NULL REFERENCES emergencies(case_id),
  set_id TEXT NOT NULL REFERENCES sets(id),
  taken_by TEXT NOT NULL REFERENCES people(id),
  taken_at TEXT NOT NULL,
  -- when it went to theatre, and when and by whom that was recorded
  gone_at TEXT,
  gone_recorded_at TEXT,
  gone_recorded_by TEXT REFERENCES people(id),
  -- what of its record was against it, in sentences
  against TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(against)),
  PRIMARY KEY (case_id, set_id),
  CHECK ((gone_at IS NULL) = (gone_recorded_at IS NULL) AND (gone_at IS NULL) = (gone_recorded_by IS NULL)),
  CHECK (gone_at IS NULL OR gone_at <= gone_recorded_at)
) STRICT, WITHOUT ROWID;
CREATE INDEX emergency_sets_by_set ON emergency_sets (set_id);
CREATE TRIGGER both_times_stay BEFORE UPDATE ON emergency_sets
  WHEN old.gone_at IS NOT NULL OR new.case_id IS NOT old.case_id OR new.set_id IS NOT old.set_id
    OR new.taken_by IS NOT old.taken_by OR new.taken_at IS NOT old.taken_at
  BEGIN SELECT raise(ABORT, 'when a set went and when that was recorded stays as it was'); END;
CREATE TRIGGER emergency_sets_are_kept BEFORE DELETE ON emergency_sets
  BEGIN SELECT raise(ABORT, 'what was taken for an emergency stays on record'); END;

CREATE TABLE emergency_questions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'openQuestion_*'),
  case_id TEXT NOT NULL REFERENCES emergencies(case_id),
  kind TEXT NOT NULL CHECK (kind IN ('plan', 'count', 'againstRecord')),
  -- the set it is about; NULL: the whole case
  set_id TEXT REFERENCES sets(id),
  opened_at TEXT NOT NULL,
  closed_at TEXT,
  closed_by TEXT REFERENCES people(id),
  CHECK ((closed_at IS NULL) = (closed_by IS NULL)),
  CHECK ((kind = 'againstRecord') = (set_id IS NOT NULL))
) STRICT;
CREATE INDEX emergency_questions_by_case ON emergency_questions (case_id);
CREATE INDEX emergency_questions_open ON emergency_questions (opened_at) WHERE closed_at IS NULL;
CREATE TRIGGER a_closed_question_stays_closed BEFORE UPDATE ON emergency_questions
  WHEN old.closed_at IS NOT NULL OR new.case_id IS NOT old.case_id OR new.kind IS NOT old.kind
    OR new.set_id IS NOT old.set_id OR new.opened_at IS NOT old.opened_at
  BEGIN SELECT raise(ABORT, 'a question is closed once, and stays as it was asked'); END;
CREATE TRIGGER emergency_questions_are_kept BEFORE DELETE ON emergency_questions
  BEGIN SELECT raise(ABORT, 'questions of an emergency are never deleted'); END;

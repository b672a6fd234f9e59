-- Change control: what a change was tried against and what its trial said, versions approved for a later day,
-- configurations taken out of use by two people, and local settings with their revision.

-- What somebody was shown before a change was approved. Never changed: an approval names the trial it rests on.
CREATE TABLE change_trials (
  id TEXT PRIMARY KEY CHECK (id GLOB 'trial_*'),
  subject_kind TEXT NOT NULL CHECK (subject_kind IN ('fit-rule', 'fit-exception', 'configuration-version')),
  subject_id TEXT NOT NULL,
  change TEXT NOT NULL CHECK (change IN ('putInForce', 'withdraw')),
  -- SHA-256 of what was tried, of what it was tried against (rules and version in force), and of the result
  content_digest TEXT NOT NULL CHECK (length(content_digest) = 64),
  basis_digest TEXT NOT NULL CHECK (length(basis_digest) = 64),
  result_digest TEXT NOT NULL CHECK (length(result_digest) = 64),
  result TEXT NOT NULL CHECK (json_valid(result)),
  tried_by TEXT NOT NULL REFERENCES people(id),
  tried_at TEXT NOT NULL
) STRICT;
CREATE INDEX change_trials_by_subject ON change_trials (subject_kind, subject_id, tried_at);
CREATE TRIGGER change_trials_are_never_changed BEFORE UPDATE ON change_trials
  BEGIN SELECT raise(ABORT, 'what was shown is never changed'); END;
CREATE TRIGGER change_trials_are_never_deleted BEFORE DELETE ON change_trials
  BEGIN SELECT raise(ABORT, 'what was shown is never deleted'); END;

-- A version that is approved and waits for its day: its row is a draft with an approval, and is frozen like one in force.
-- On its day it counts as in force; the next write that looks at it, or the next start, settles its status.
ALTER TABLE configuration_versions ADD COLUMN approved_at TEXT;
CREATE TRIGGER frozen_approved_version BEFORE UPDATE ON configuration_versions
  WHEN old.status = 'draft' AND old.approved_at IS NOT NULL
    AND (new.layers IS NOT old.layers OR new.promises IS NOT old.promises OR new.note IS NOT old.note
      OR new.basket_item_id IS NOT old.basket_item_id OR new.container_item_id IS NOT old.container_item_id
      OR new.version IS NOT old.version OR new.drafted_by IS NOT old.drafted_by)
  BEGIN SELECT raise(ABORT, 'an approved version never changes: take its approval back first'); END;
CREATE TRIGGER frozen_approved_lines_insert BEFORE INSERT ON configuration_lines
  WHEN (SELECT status = 'draft' AND approved_at IS NOT NULL FROM configuration_versions WHERE id = new.version_id)
  BEGIN SELECT raise(ABORT, 'an approved version never changes: take its approval back first'); END;
CREATE TRIGGER frozen_approved_lines_update BEFORE UPDATE ON configuration_lines
  WHEN (SELECT status = 'draft' AND approved_at IS NOT NULL FROM configuration_versions WHERE id = old.version_id)
  BEGIN SELECT raise(ABORT, 'an approved version never changes: take its approval back first'); END;
CREATE TRIGGER frozen_approved_lines_delete BEFORE DELETE ON configuration_lines
  WHEN (SELECT status = 'draft' AND approved_at IS NOT NULL FROM configuration_versions WHERE id = old.version_id)
  BEGIN SELECT raise(ABORT, 'an approved version never changes: take its approval back first'); END;
CREATE TRIGGER kept_version BEFORE DELETE ON configuration_versions
  WHEN old.status <> 'draft' OR old.approved_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'a version that was approved is never deleted'); END;
-- Two people, and a day, for every version approved from now on.
CREATE TRIGGER approved_by_a_second_person BEFORE UPDATE ON configuration_versions
  WHEN new.approved_at IS NOT NULL
    AND (new.approved_by IS NULL OR new.approved_by IS new.drafted_by OR new.in_force_from IS NULL)
  BEGIN SELECT raise(ABORT, 'a version is approved by a second person, from a day'); END;

-- Out of use and back: one person asks, another agrees.
CREATE TABLE configuration_requests (
  id TEXT PRIMARY KEY CHECK (id GLOB 'request_*'),
  configuration_id TEXT NOT NULL REFERENCES configurations(id),
  kind TEXT NOT NULL CHECK (kind IN ('withdraw', 'bringBack')),
  because TEXT NOT NULL CHECK (length(because) BETWEEN 8 AND 300),
  asked_by TEXT NOT NULL REFERENCES people(id),
  asked_at TEXT NOT NULL,
  decided_by TEXT REFERENCES people(id),
  decided_at TEXT,
  decision TEXT CHECK (decision IN ('agreed', 'turnedDown')),
  CHECK ((decided_by IS NULL) = (decided_at IS NULL)),
  CHECK ((decided_by IS NULL) = (decision IS NULL)),
  CHECK (decision IS NOT 'agreed' OR decided_by <> asked_by)
) STRICT;
CREATE INDEX configuration_requests_by_configuration ON configuration_requests (configuration_id, asked_at);
CREATE UNIQUE INDEX one_open_request ON configuration_requests (configuration_id) WHERE decided_at IS NULL;
CREATE TRIGGER decided_requests_stay BEFORE UPDATE ON configuration_requests
  WHEN old.decided_at IS NOT NULL OR new.configuration_id IS NOT old.configuration_id OR new.kind IS NOT old.kind
    OR new.because IS NOT old.because OR new.asked_by IS NOT old.asked_by OR new.asked_at IS NOT old.asked_at
  BEGIN SELECT raise(ABORT, 'what was asked and decided stays'); END;
CREATE TRIGGER requests_are_kept BEFORE DELETE ON configuration_requests
  BEGIN SELECT raise(ABORT, 'what was asked and decided stays'); END;

ALTER TABLE configurations ADD COLUMN withdrawn_at TEXT;
CREATE TRIGGER withdrawn_by_two_people BEFORE UPDATE OF withdrawn_at ON configurations
  WHEN new.withdrawn_at IS NOT old.withdrawn_at AND NOT EXISTS (
    SELECT 1 FROM configuration_requests WHERE configuration_id = new.id AND decision = 'agreed'
      AND kind = CASE WHEN new.withdrawn_at IS NULL THEN 'bringBack' ELSE 'withdraw' END
      AND decided_at >= coalesce(new.withdrawn_at, old.withdrawn_at))
  BEGIN SELECT raise(ABORT, 'a configuration goes out of use, and comes back, by two people'); END;
CREATE TRIGGER no_new_set_of_a_withdrawn_configuration BEFORE INSERT ON sets
  WHEN (SELECT configurations.withdrawn_at IS NOT NULL FROM configuration_versions
    JOIN configurations ON configurations.id = configuration_versions.configuration_id
    WHERE configuration_versions.id = new.version_id)
  BEGIN SELECT raise(ABORT, 'no new set of a configuration that is out of use'); END;

-- Local settings: guarded by a revision, with who set them last and when.
ALTER TABLE settings ADD COLUMN revision INTEGER NOT NULL DEFAULT 1 CHECK (revision > 0);
ALTER TABLE settings ADD COLUMN changed_by TEXT REFERENCES people(id);
ALTER TABLE settings ADD COLUMN changed_at TEXT;

-- The foundation: catalogue, rules, configurations, sets, stock, cases, plans, ledger.
-- Tables are STRICT; what the application promises, the database checks again.

CREATE TABLE makers (
  id TEXT PRIMARY KEY CHECK (id GLOB 'maker_*'),
  name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 80)
) STRICT;

CREATE TABLE items (
  id TEXT PRIMARY KEY CHECK (id GLOB 'item_*'),
  code TEXT NOT NULL UNIQUE COLLATE NOCASE,
  kind TEXT NOT NULL,
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  nickname TEXT,
  maker_id TEXT NOT NULL REFERENCES makers(id),
  side TEXT CHECK (side IN ('left', 'right', 'either')),
  material TEXT,
  supplied_sterile INTEGER CHECK (supplied_sterile IN (0, 1)),
  use TEXT NOT NULL CHECK (use IN ('singleUse', 'reprocessable')),
  reprocessing_limit INTEGER CHECK (reprocessing_limit > 0),
  mass_grams INTEGER CHECK (mass_grams > 0),
  unit_cost_pence INTEGER CHECK (unit_cost_pence >= 0),
  pack_multiple INTEGER NOT NULL CHECK (pack_multiple > 0),
  gtin TEXT UNIQUE CHECK (length(gtin) = 14),
  parts_per_piece INTEGER NOT NULL CHECK (parts_per_piece > 0),
  status TEXT NOT NULL CHECK (status IN ('current', 'withdrawn', 'recalled')),
  detail TEXT NOT NULL CHECK (json_valid(detail)),
  search_text TEXT NOT NULL,
  diameter_um INTEGER GENERATED ALWAYS AS (
    CAST(coalesce(detail ->> '$.threadUm', detail ->> '$.diameterUm', detail ->> '$.ends[0].boreUm') AS INTEGER)) VIRTUAL,
  length_um INTEGER GENERATED ALWAYS AS (CAST(detail ->> '$.lengthUm' AS INTEGER)) VIRTUAL,
  screw_family TEXT GENERATED ALWAYS AS (detail ->> '$.screwFamily') VIRTUAL,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX items_by_kind ON items (kind, diameter_um, length_um);
CREATE INDEX items_by_screw_family ON items (screw_family, length_um) WHERE kind = 'screw';

CREATE VIRTUAL TABLE items_search USING fts5 (
  search_text, content = 'items', content_rowid = 'rowid', prefix = '1 2 3', tokenize = "unicode61 tokenchars './-'");
CREATE TRIGGER items_search_insert AFTER INSERT ON items BEGIN
  INSERT INTO items_search (rowid, search_text) VALUES (new.rowid, new.search_text);
END;
CREATE TRIGGER items_search_delete AFTER DELETE ON items BEGIN
  INSERT INTO items_search (items_search, rowid, search_text) VALUES ('delete', old.rowid, old.search_text);
END;
CREATE TRIGGER items_search_update AFTER UPDATE OF search_text ON items BEGIN
  INSERT INTO items_search (items_search, rowid, search_text) VALUES ('delete', old.rowid, old.search_text);
  INSERT INTO items_search (rowid, search_text) VALUES (new.rowid, new.search_text);
END;

CREATE TABLE fit_rules (
  id TEXT PRIMARY KEY CHECK (id GLOB 'rule_*'),
  code TEXT NOT NULL,
  relation TEXT NOT NULL,
  applies_when TEXT NOT NULL CHECK (json_valid(applies_when)),
  requires TEXT NOT NULL CHECK (json_valid(requires)),
  severity TEXT NOT NULL CHECK (severity IN ('stops', 'caution', 'note')),
  sentence TEXT NOT NULL,
  source TEXT NOT NULL CHECK (json_valid(source)),
  status TEXT NOT NULL CHECK (status IN ('draft', 'inForce', 'withdrawn')),
  drafted_by TEXT REFERENCES people(id),
  approved_by TEXT REFERENCES people(id),
  in_force_from TEXT,
  in_force_until TEXT,
  withdrawal_asked_by TEXT REFERENCES people(id),
  withdrawn_by TEXT REFERENCES people(id),
  version INTEGER NOT NULL CHECK (version > 0),
  -- Two people: nobody approves a draft, or agrees to a withdrawal, of their own.
  CHECK (approved_by IS NULL OR approved_by IS NOT drafted_by),
  CHECK (status = 'draft' OR drafted_by IS NULL OR approved_by IS NOT NULL),
  CHECK (status = 'draft' OR in_force_from IS NOT NULL),
  CHECK (withdrawn_by IS NULL OR (withdrawal_asked_by IS NOT NULL AND withdrawn_by <> withdrawal_asked_by))
) STRICT;
CREATE UNIQUE INDEX one_rule_of_a_code_in_force ON fit_rules (code) WHERE status = 'inForce' AND in_force_until IS NULL;
CREATE UNIQUE INDEX one_draft_of_a_code ON fit_rules (code) WHERE status = 'draft';
CREATE UNIQUE INDEX one_version_of_a_code ON fit_rules (code, version);
CREATE TRIGGER frozen_rule BEFORE UPDATE ON fit_rules
  WHEN old.status <> 'draft' AND (new.code IS NOT old.code OR new.relation IS NOT old.relation
    OR new.applies_when IS NOT old.applies_when OR new.requires IS NOT old.requires OR new.severity IS NOT old.severity
    OR new.sentence IS NOT old.sentence OR new.source IS NOT old.source OR new.version IS NOT old.version
    OR new.drafted_by IS NOT old.drafted_by OR new.approved_by IS NOT old.approved_by
    OR new.in_force_from IS NOT old.in_force_from OR new.status = 'draft'
    OR (old.status = 'withdrawn' AND new.status <> 'withdrawn'))
  BEGIN SELECT raise(ABORT, 'a rule in force never changes: draft its next version'); END;
CREATE TRIGGER kept_rule BEFORE DELETE ON fit_rules WHEN old.status <> 'draft'
  BEGIN SELECT raise(ABORT, 'a rule that was in force is never deleted'); END;

CREATE TABLE fit_exceptions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'exception_*'),
  relation TEXT NOT NULL,
  first_item_id TEXT NOT NULL REFERENCES items(id),
  second_item_id TEXT NOT NULL REFERENCES items(id),
  answer TEXT NOT NULL CHECK (answer IN ('allow', 'deny')),
  sentence TEXT NOT NULL,
  source TEXT NOT NULL CHECK (json_valid(source)),
  status TEXT NOT NULL CHECK (status IN ('draft', 'inForce', 'withdrawn')),
  drafted_by TEXT REFERENCES people(id),
  approved_by TEXT REFERENCES people(id),
  in_force_from TEXT,
  in_force_until TEXT,
  withdrawal_asked_by TEXT REFERENCES people(id),
  withdrawn_by TEXT REFERENCES people(id),
  version INTEGER NOT NULL CHECK (version > 0),
  -- Two people: nobody approves a draft, or agrees to a withdrawal, of their own.
  CHECK (approved_by IS NULL OR approved_by IS NOT drafted_by),
  CHECK (status = 'draft' OR drafted_by IS NULL OR approved_by IS NOT NULL),
  CHECK (status = 'draft' OR in_force_from IS NOT NULL),
  CHECK (withdrawn_by IS NULL OR (withdrawal_asked_by IS NOT NULL AND withdrawn_by <> withdrawal_asked_by))
) STRICT;
CREATE UNIQUE INDEX one_exception_of_a_pair_in_force
  ON fit_exceptions (relation, min(first_item_id, second_item_id), max(first_item_id, second_item_id))
  WHERE status = 'inForce' AND in_force_until IS NULL;
CREATE TRIGGER frozen_exception BEFORE UPDATE ON fit_exceptions
  WHEN old.status <> 'draft' AND (new.relation IS NOT old.relation OR new.first_item_id IS NOT old.first_item_id
    OR new.second_item_id IS NOT old.second_item_id OR new.answer IS NOT old.answer
    OR new.sentence IS NOT old.sentence OR new.source IS NOT old.source OR new.version IS NOT old.version
    OR new.drafted_by IS NOT old.drafted_by OR new.approved_by IS NOT old.approved_by
    OR new.in_force_from IS NOT old.in_force_from OR new.status = 'draft'
    OR (old.status = 'withdrawn' AND new.status <> 'withdrawn'))
  BEGIN SELECT raise(ABORT, 'an exception in force never changes'); END;
CREATE TRIGGER kept_exception BEFORE DELETE ON fit_exceptions WHEN old.status <> 'draft'
  BEGIN SELECT raise(ABORT, 'an exception that was in force is never deleted'); END;

CREATE TABLE places (
  id TEXT PRIMARY KEY CHECK (id GLOB 'place_*'),
  name TEXT NOT NULL UNIQUE,
  metres INTEGER NOT NULL CHECK (metres >= 0)
) STRICT;

CREATE TABLE theatres (id TEXT PRIMARY KEY CHECK (id GLOB 'theatre_*'), name TEXT NOT NULL UNIQUE) STRICT;

CREATE TABLE people (
  id TEXT PRIMARY KEY CHECK (id GLOB 'person_*'),
  name TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('technician', 'decontaminationLead', 'surgeon', 'scrubPractitioner',
    'stockKeeper', 'theatreManager', 'incidentLead', 'administrator'))
) STRICT;

CREATE TABLE settings (key TEXT PRIMARY KEY, value TEXT NOT NULL CHECK (json_valid(value))) STRICT;

CREATE TABLE configurations (
  id TEXT PRIMARY KEY CHECK (id GLOB 'configuration_*'),
  code TEXT NOT NULL UNIQUE COLLATE NOCASE,
  name TEXT NOT NULL
) STRICT;

CREATE TABLE configuration_versions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'version_*'),
  configuration_id TEXT NOT NULL REFERENCES configurations(id),
  version INTEGER NOT NULL CHECK (version > 0),
  status TEXT NOT NULL CHECK (status IN ('draft', 'inForce', 'superseded')),
  layers TEXT NOT NULL CHECK (json_valid(layers)),
  promises TEXT NOT NULL CHECK (json_valid(promises)),
  basket_item_id TEXT REFERENCES items(id),
  container_item_id TEXT REFERENCES items(id),
  note TEXT,
  drafted_by TEXT REFERENCES people(id),
  approved_by TEXT REFERENCES people(id),
  in_force_from TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  UNIQUE (configuration_id, version)
) STRICT;
CREATE UNIQUE INDEX one_version_in_force ON configuration_versions (configuration_id) WHERE status = 'inForce';
CREATE UNIQUE INDEX one_draft ON configuration_versions (configuration_id) WHERE status = 'draft';

CREATE TABLE configuration_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'line_*'),
  version_id TEXT NOT NULL REFERENCES configuration_versions(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  layer INTEGER NOT NULL CHECK (layer > 0),
  row INTEGER NOT NULL CHECK (row > 0),
  slot INTEGER NOT NULL CHECK (slot > 0),
  rack_item_id TEXT REFERENCES items(id),
  expected INTEGER NOT NULL CHECK (expected > 0),
  minimum INTEGER NOT NULL CHECK (minimum BETWEEN 0 AND expected),
  must_have_class INTEGER NOT NULL CHECK (must_have_class BETWEEN 1 AND 4),
  substitutes TEXT NOT NULL CHECK (json_valid(substitutes)),
  UNIQUE (version_id, layer, row, slot)
) STRICT;
CREATE INDEX configuration_lines_by_item ON configuration_lines (item_id);

-- A version in force never changes: its lines neither, and it only ever becomes superseded.
CREATE TRIGGER frozen_lines_insert BEFORE INSERT ON configuration_lines
  WHEN (SELECT status FROM configuration_versions WHERE id = new.version_id) <> 'draft'
  BEGIN SELECT raise(ABORT, 'a version in force never changes'); END;
CREATE TRIGGER frozen_lines_update BEFORE UPDATE ON configuration_lines
  WHEN (SELECT status FROM configuration_versions WHERE id = old.version_id) <> 'draft'
  BEGIN SELECT raise(ABORT, 'a version in force never changes'); END;
CREATE TRIGGER frozen_lines_delete BEFORE DELETE ON configuration_lines
  WHEN (SELECT status FROM configuration_versions WHERE id = old.version_id) <> 'draft'
  BEGIN SELECT raise(ABORT, 'a version in force never changes'); END;
CREATE TRIGGER frozen_version BEFORE UPDATE ON configuration_versions
  WHEN old.status <> 'draft' AND (new.layers IS NOT old.layers OR new.promises IS NOT old.promises
    OR new.basket_item_id IS NOT old.basket_item_id OR new.container_item_id IS NOT old.container_item_id
    OR new.version IS NOT old.version OR new.status = 'draft'
    OR (old.status = 'superseded' AND new.status <> 'superseded'))
  BEGIN SELECT raise(ABORT, 'a version in force never changes'); END;

CREATE TABLE sets (
  id TEXT PRIMARY KEY CHECK (id GLOB 'set_*'),
  code TEXT NOT NULL UNIQUE COLLATE NOCASE,
  version_id TEXT NOT NULL REFERENCES configuration_versions(id),
  owner TEXT NOT NULL CHECK (owner IN ('ours', 'loan')),
  owner_note TEXT,
  step TEXT NOT NULL CHECK (step IN ('inTheatre', 'comingBack', 'washing', 'onBench', 'shortAwaitingDecision', 'packed',
    'inSteriliser', 'awaitingAcceptance', 'inSterileStore', 'held')),
  step_since TEXT NOT NULL,
  held_because TEXT,
  ready_at TEXT,
  use_by TEXT,
  place_id TEXT REFERENCES places(id),
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((step = 'held') = (held_because IS NOT NULL))
) STRICT;
CREATE INDEX sets_by_version ON sets (version_id);

CREATE TABLE set_contents (
  set_id TEXT NOT NULL REFERENCES sets(id),
  line_id TEXT NOT NULL REFERENCES configuration_lines(id),
  found INTEGER NOT NULL CHECK (found >= 0),
  unsound INTEGER NOT NULL CHECK (unsound >= 0),
  condition TEXT NOT NULL,
  PRIMARY KEY (set_id, line_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE set_foreign_pieces (
  id TEXT PRIMARY KEY,
  set_id TEXT NOT NULL REFERENCES sets(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  note TEXT
) STRICT;
CREATE INDEX set_foreign_pieces_by_set ON set_foreign_pieces (set_id);

CREATE TABLE counts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'count_*'),
  set_id TEXT NOT NULL REFERENCES sets(id),
  version_id TEXT NOT NULL REFERENCES configuration_versions(id),
  counted_by TEXT NOT NULL REFERENCES people(id),
  counted_at TEXT NOT NULL,
  base_revision INTEGER NOT NULL
) STRICT;
CREATE INDEX counts_by_set ON counts (set_id, counted_at);

CREATE TABLE count_lines (
  count_id TEXT NOT NULL REFERENCES counts(id),
  line_id TEXT NOT NULL REFERENCES configuration_lines(id),
  expected INTEGER NOT NULL,
  found INTEGER NOT NULL CHECK (found >= 0),
  unsound INTEGER NOT NULL CHECK (unsound >= 0),
  condition TEXT NOT NULL,
  PRIMARY KEY (count_id, line_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE stock (
  id TEXT PRIMARY KEY CHECK (id GLOB 'stock_*'),
  item_id TEXT NOT NULL REFERENCES items(id),
  form TEXT NOT NULL CHECK (form IN ('pouch', 'sterilePacked', 'unsterile')),
  lot TEXT,
  use_by TEXT,
  quantity INTEGER NOT NULL CHECK (quantity >= 0),
  owner TEXT NOT NULL CHECK (owner IN ('ours', 'consignment')),
  place_id TEXT NOT NULL REFERENCES places(id),
  held_because TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX stock_by_item ON stock (item_id, use_by);

CREATE TABLE cases (
  id TEXT PRIMARY KEY CHECK (id GLOB 'case_*'),
  reference TEXT NOT NULL UNIQUE,
  theatre_id TEXT NOT NULL REFERENCES theatres(id),
  case_date TEXT NOT NULL,
  starts_at TEXT NOT NULL,
  ends_at TEXT NOT NULL,
  region TEXT NOT NULL,
  limb TEXT NOT NULL CHECK (limb IN ('left', 'right')),
  surgeon_id TEXT NOT NULL REFERENCES people(id),
  urgency TEXT NOT NULL CHECK (urgency IN ('booked', 'soon', 'today', 'now')),
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK (starts_at < ends_at)
) STRICT;
CREATE INDEX cases_by_start ON cases (starts_at);

CREATE TABLE plans (
  id TEXT PRIMARY KEY CHECK (id GLOB 'plan_*'),
  case_id TEXT NOT NULL REFERENCES cases(id),
  version INTEGER NOT NULL CHECK (version > 0),
  status TEXT NOT NULL CHECK (status IN ('draft', 'confirmed', 'superseded')),
  body TEXT NOT NULL CHECK (json_valid(body)),
  written_by TEXT NOT NULL REFERENCES people(id),
  written_at TEXT NOT NULL,
  confirmed_by TEXT REFERENCES people(id),
  confirmed_at TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  UNIQUE (case_id, version),
  CHECK (status = 'draft' OR confirmed_by IS NOT NULL)
) STRICT;
CREATE UNIQUE INDEX one_confirmed_plan ON plans (case_id) WHERE status = 'confirmed';
CREATE UNIQUE INDEX one_draft_plan ON plans (case_id) WHERE status = 'draft';

-- A confirmed plan is frozen: it can only be superseded.
CREATE TRIGGER frozen_plan BEFORE UPDATE ON plans
  WHEN old.status <> 'draft' AND (new.body IS NOT old.body OR new.version IS NOT old.version
    OR new.status = 'draft' OR (old.status = 'superseded' AND new.status <> 'superseded')
    OR new.confirmed_by IS NOT old.confirmed_by OR new.confirmed_at IS NOT old.confirmed_at)
  BEGIN SELECT raise(ABORT, 'a confirmed plan never changes'); END;
CREATE TRIGGER kept_plan BEFORE DELETE ON plans WHEN old.status <> 'draft'
  BEGIN SELECT raise(ABORT, 'a confirmed plan is never deleted'); END;

CREATE TABLE plan_starts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'start_*'),
  person_id TEXT NOT NULL REFERENCES people(id),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  body TEXT NOT NULL CHECK (json_valid(body)),
  saved_at TEXT NOT NULL,
  UNIQUE (person_id, name)
) STRICT;

CREATE TABLE set_promises (
  id TEXT PRIMARY KEY,
  set_id TEXT NOT NULL REFERENCES sets(id),
  case_id TEXT NOT NULL REFERENCES cases(id),
  UNIQUE (set_id, case_id)
) STRICT;
CREATE INDEX set_promises_by_case ON set_promises (case_id);

CREATE TABLE ledger (
  seq INTEGER PRIMARY KEY,
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  person_id TEXT REFERENCES people(id),
  action TEXT NOT NULL,
  subject_kind TEXT NOT NULL,
  subject_id TEXT NOT NULL,
  detail TEXT NOT NULL CHECK (json_valid(detail)),
  previous_hash TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX ledger_by_subject ON ledger (subject_kind, subject_id, seq);
CREATE TRIGGER ledger_is_never_changed BEFORE UPDATE ON ledger
  BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER ledger_is_never_shortened BEFORE DELETE ON ledger
  BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;

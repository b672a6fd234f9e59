-- The bench: turns and their steps, counts in the making, packs, loads, short sets, and what opens from them.

CREATE TABLE turns (
  id TEXT PRIMARY KEY CHECK (id GLOB 'turn_*'),
  set_id TEXT NOT NULL REFERENCES sets(id),
  number INTEGER NOT NULL CHECK (number > 0),
  began_at TEXT NOT NULL,
  UNIQUE (set_id, number)
) STRICT;

ALTER TABLE sets ADD COLUMN turn_id TEXT REFERENCES turns(id);
ALTER TABLE sets ADD COLUMN pack_id TEXT REFERENCES packs(id);
ALTER TABLE sets ADD COLUMN held_from TEXT;
ALTER TABLE sets ADD COLUMN case_id TEXT REFERENCES cases(id);
ALTER TABLE sets ADD COLUMN withdrawn_at TEXT;
ALTER TABLE sets ADD COLUMN withdrawn_because TEXT;

-- Every step a set took, never changed. `done_at` is when it happened, `entered_at` when it was recorded.
CREATE TABLE turn_steps (
  seq INTEGER PRIMARY KEY,
  set_id TEXT NOT NULL REFERENCES sets(id),
  turn_id TEXT NOT NULL REFERENCES turns(id),
  from_step TEXT,
  step TEXT NOT NULL,
  because TEXT,
  note TEXT,
  person_id TEXT REFERENCES people(id),
  workstation_id TEXT REFERENCES workstations(id),
  place_id TEXT REFERENCES places(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX turn_steps_by_set ON turn_steps (set_id, seq);
CREATE INDEX turn_steps_by_turn ON turn_steps (turn_id, seq);
CREATE TRIGGER turn_steps_are_never_changed BEFORE UPDATE ON turn_steps
  BEGIN SELECT raise(ABORT, 'steps taken are append-only'); END;
CREATE TRIGGER turn_steps_are_never_deleted BEFORE DELETE ON turn_steps
  BEGIN SELECT raise(ABORT, 'steps taken are append-only'); END;

CREATE TABLE legal_steps (from_step TEXT NOT NULL, to_step TEXT NOT NULL, PRIMARY KEY (from_step, to_step)) STRICT, WITHOUT ROWID;
INSERT INTO legal_steps VALUES
  ('inTheatre', 'comingBack'), ('inTheatre', 'held'),
  ('comingBack', 'washing'), ('comingBack', 'held'),
  ('washing', 'onBench'), ('washing', 'held'),
  ('onBench', 'washing'), ('onBench', 'shortAwaitingDecision'), ('onBench', 'packed'), ('onBench', 'held'),
  ('shortAwaitingDecision', 'onBench'), ('shortAwaitingDecision', 'packed'), ('shortAwaitingDecision', 'held'),
  ('packed', 'inSteriliser'), ('packed', 'onBench'), ('packed', 'held'),
  ('inSteriliser', 'awaitingAcceptance'), ('inSteriliser', 'held'),
  ('awaitingAcceptance', 'inSterileStore'), ('awaitingAcceptance', 'onBench'), ('awaitingAcceptance', 'held'),
  ('inSterileStore', 'inTheatre'), ('inSterileStore', 'onBench'), ('inSterileStore', 'held'),
  ('held', 'washing'), ('held', 'onBench'), ('held', 'awaitingAcceptance'), ('held', 'inSterileStore'),
  ('held', 'comingBack'), ('held', 'packed');
CREATE TRIGGER only_legal_steps BEFORE UPDATE OF step ON sets
  WHEN old.step <> new.step
    AND NOT EXISTS (SELECT 1 FROM legal_steps WHERE from_step = old.step AND to_step = new.step)
  BEGIN SELECT raise(ABORT, 'a set does not go from that step to this one'); END;
CREATE TRIGGER withdrawn_sets_stay BEFORE UPDATE OF step ON sets
  WHEN old.step <> new.step AND new.step <> 'held' AND new.withdrawn_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'a set taken out of service takes no step but into a hold'); END;

-- One sterile barrier round one set or one item. `number` is what its label carries.
CREATE TABLE packs (
  id TEXT PRIMARY KEY CHECK (id GLOB 'pack_*'),
  number TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL CHECK (kind IN ('set', 'pouch')),
  set_id TEXT REFERENCES sets(id),
  turn_id TEXT REFERENCES turns(id),
  version_id TEXT REFERENCES configuration_versions(id),
  item_id TEXT REFERENCES items(id),
  lot TEXT,
  barrier TEXT NOT NULL CHECK (barrier IN ('wrap', 'container', 'pouch')),
  packed_by TEXT NOT NULL REFERENCES people(id),
  packed_at TEXT NOT NULL,
  -- from the pieces; NULL where a piece's mass is not stated
  worked_grams INTEGER CHECK (worked_grams > 0),
  weighed_grams INTEGER CHECK (weighed_grams > 0),
  -- what lay in it when it was closed, by line
  contents TEXT NOT NULL CHECK (json_valid(contents)),
  -- what is short and what that stops; NULL where nothing is
  short TEXT CHECK (short IS NULL OR json_valid(short)),
  decision_id TEXT REFERENCES short_decisions(id),
  for_case_id TEXT REFERENCES cases(id),
  load_id TEXT REFERENCES loads(id),
  use_by TEXT,
  stock_id TEXT REFERENCES stock(id),
  state TEXT NOT NULL CHECK (state IN ('closed', 'inLoad', 'awaitingAcceptance', 'sterile', 'opened', 'undone')),
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((kind = 'set') = (set_id IS NOT NULL)),
  CHECK ((kind = 'pouch') = (item_id IS NOT NULL))
) STRICT;
CREATE INDEX packs_by_set ON packs (set_id, packed_at);
CREATE INDEX packs_by_load ON packs (load_id);
CREATE UNIQUE INDEX one_live_pack_of_a_set ON packs (set_id) WHERE kind = 'set' AND state NOT IN ('opened', 'undone');
CREATE TRIGGER what_was_packed_is_kept BEFORE UPDATE ON packs
  WHEN new.number IS NOT old.number OR new.contents IS NOT old.contents OR new.short IS NOT old.short
    OR new.packed_by IS NOT old.packed_by OR new.packed_at IS NOT old.packed_at OR new.set_id IS NOT old.set_id
    OR new.turn_id IS NOT old.turn_id OR new.item_id IS NOT old.item_id OR old.state IN ('opened', 'undone')
  BEGIN SELECT raise(ABORT, 'what was packed never changes: open it and pack again'); END;
CREATE TRIGGER packs_are_kept BEFORE DELETE ON packs
  BEGIN SELECT raise(ABORT, 'packs are never deleted'); END;

CREATE TABLE label_prints (
  id TEXT PRIMARY KEY CHECK (id GLOB 'print_*'),
  pack_id TEXT NOT NULL REFERENCES packs(id),
  copy INTEGER NOT NULL CHECK (copy > 0),
  because TEXT,
  printed_by TEXT NOT NULL REFERENCES people(id),
  printed_at TEXT NOT NULL,
  UNIQUE (pack_id, copy),
  CHECK (copy = 1 OR because IS NOT NULL)
) STRICT;

-- Count sheets handed to the printer: an old one is known when it is scanned.
CREATE TABLE sheet_prints (
  number TEXT PRIMARY KEY,
  set_id TEXT NOT NULL REFERENCES sets(id),
  version_id TEXT NOT NULL REFERENCES configuration_versions(id),
  set_revision INTEGER NOT NULL,
  printed_by TEXT NOT NULL REFERENCES people(id),
  printed_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE sterilisers (
  id TEXT PRIMARY KEY CHECK (id GLOB 'steriliser_*'),
  name TEXT NOT NULL UNIQUE,
  -- programmes it runs: name, holding band in millidegrees Celsius, holding time in seconds
  programmes TEXT NOT NULL CHECK (json_valid(programmes)),
  withdrawn_at TEXT
) STRICT;

CREATE TABLE loads (
  id TEXT PRIMARY KEY CHECK (id GLOB 'load_*'),
  number TEXT NOT NULL UNIQUE,
  steriliser_id TEXT NOT NULL REFERENCES sterilisers(id),
  programme TEXT NOT NULL,
  cycle_number TEXT,
  state TEXT NOT NULL CHECK (state IN ('makingUp', 'running', 'awaitingAcceptance', 'accepted', 'rejected', 'undone')),
  made_up_by TEXT NOT NULL REFERENCES people(id),
  made_up_at TEXT NOT NULL,
  started_by TEXT REFERENCES people(id),
  started_at TEXT,
  ended_by TEXT REFERENCES people(id),
  ended_at TEXT,
  decided_by TEXT REFERENCES people(id),
  decided_at TEXT,
  reason TEXT,
  -- set out before the biological result, by whom and why
  exception TEXT CHECK (exception IS NULL OR json_valid(exception)),
  -- the record of the cycle as it was imported: summary of readings
  cycle TEXT CHECK (cycle IS NULL OR json_valid(cycle)),
  -- the programme as it stood when the load was started: name, band, holding time
  ran TEXT CHECK (ran IS NULL OR json_valid(ran)),
  -- of a rejected load: what failed, and from which accepted load to which the doubt reaches
  failure TEXT CHECK (failure IS NULL OR json_valid(failure)),
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((state IN ('accepted', 'rejected')) = (decided_by IS NOT NULL)),
  CHECK (state IN ('makingUp', 'undone') OR started_at IS NOT NULL)
) STRICT;
CREATE INDEX loads_by_steriliser ON loads (steriliser_id, started_at);
CREATE UNIQUE INDEX one_running_load ON loads (steriliser_id) WHERE state = 'running';
CREATE TRIGGER a_decided_load_stays BEFORE UPDATE ON loads
  WHEN (old.state = 'rejected' AND new.state <> 'rejected') OR (old.state = 'accepted' AND new.state NOT IN ('accepted', 'rejected'))
  BEGIN SELECT raise(ABORT, 'a decided load is not decided again'); END;

CREATE TABLE load_packs (
  load_id TEXT NOT NULL REFERENCES loads(id),
  pack_id TEXT NOT NULL REFERENCES packs(id),
  put_in_by TEXT NOT NULL REFERENCES people(id),
  put_in_at TEXT NOT NULL,
  unloaded_as TEXT CHECK (unloaded_as IN ('sound', 'wet', 'torn', 'unsealed')),
  unloaded_by TEXT REFERENCES people(id),
  unloaded_at TEXT,
  PRIMARY KEY (load_id, pack_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX load_packs_by_pack ON load_packs (pack_id);

-- What a failed load put in doubt, and where each pack was when that was found.
CREATE TABLE packs_in_doubt (
  failed_load_id TEXT NOT NULL REFERENCES loads(id),
  pack_id TEXT NOT NULL REFERENCES packs(id),
  load_id TEXT NOT NULL REFERENCES loads(id),
  fate_then TEXT NOT NULL CHECK (fate_then IN ('here', 'heldAlready', 'used', 'openedHere', 'notEstablished')),
  PRIMARY KEY (failed_load_id, pack_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX packs_in_doubt_by_pack ON packs_in_doubt (pack_id);

CREATE TABLE load_readings (
  load_id TEXT NOT NULL REFERENCES loads(id),
  second INTEGER NOT NULL CHECK (second >= 0),
  millicelsius INTEGER NOT NULL,
  millibar INTEGER,
  PRIMARY KEY (load_id, second)
) STRICT, WITHOUT ROWID;

CREATE TABLE load_indicators (
  id TEXT PRIMARY KEY CHECK (id GLOB 'indicator_*'),
  load_id TEXT NOT NULL REFERENCES loads(id),
  kind TEXT NOT NULL CHECK (kind IN ('chemical', 'biological', 'airRemoval', 'printedRecord')),
  lot TEXT,
  use_by TEXT,
  position TEXT,
  result TEXT NOT NULL CHECK (result IN ('pending', 'passed', 'failed')),
  read_by TEXT REFERENCES people(id),
  read_at TEXT,
  CHECK ((result = 'pending') = (read_by IS NULL))
) STRICT;
CREATE INDEX load_indicators_by_load ON load_indicators (load_id);

-- A count in the making. Its entries are durable one by one; closing it makes it a count.
CREATE TABLE bench_counts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'count_*'),
  set_id TEXT NOT NULL REFERENCES sets(id),
  turn_id TEXT NOT NULL REFERENCES turns(id),
  version_id TEXT NOT NULL REFERENCES configuration_versions(id),
  purpose TEXT NOT NULL CHECK (purpose IN ('count', 'check', 'settle')),
  person_id TEXT NOT NULL REFERENCES people(id),
  workstation_id TEXT REFERENCES workstations(id),
  base_revision INTEGER NOT NULL,
  began_at TEXT NOT NULL,
  closed_at TEXT,
  -- entries it was closed with, and SHA-256 over them in order
  entry_count INTEGER,
  entry_digest TEXT,
  abandoned_at TEXT,
  CHECK ((closed_at IS NULL) = (entry_digest IS NULL))
) STRICT;
CREATE INDEX bench_counts_by_set ON bench_counts (set_id, began_at);
CREATE UNIQUE INDEX one_open_count_of_a_person ON bench_counts (set_id, person_id) WHERE closed_at IS NULL AND abandoned_at IS NULL;

CREATE TABLE bench_entries (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id GLOB 'entry_*'),
  count_id TEXT NOT NULL REFERENCES bench_counts(id),
  -- what was done, as `lib/bench` reads it
  act TEXT NOT NULL CHECK (json_valid(act)),
  person_id TEXT NOT NULL REFERENCES people(id),
  second_person_id TEXT REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  scan_id TEXT,
  -- a look-alike was put in: two people stand for it, here or by a blind check afterwards
  needs_second INTEGER NOT NULL DEFAULT 0 CHECK (needs_second IN (0, 1)),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  CHECK (second_person_id IS NULL OR second_person_id <> person_id)
) STRICT;
CREATE INDEX bench_entries_by_count ON bench_entries (count_id, seq);
CREATE TRIGGER bench_entries_are_never_changed BEFORE UPDATE ON bench_entries
  BEGIN SELECT raise(ABORT, 'entries at the bench are append-only'); END;
CREATE TRIGGER bench_entries_are_never_deleted BEFORE DELETE ON bench_entries
  BEGIN SELECT raise(ABORT, 'entries at the bench are append-only'); END;
CREATE TRIGGER a_closed_count_takes_no_entry BEFORE INSERT ON bench_entries
  WHEN (SELECT closed_at IS NOT NULL OR abandoned_at IS NOT NULL FROM bench_counts WHERE id = new.count_id)
  BEGIN SELECT raise(ABORT, 'a closed count takes no entry'); END;

-- Lines on which two people's counts of one turn differ. Both figures are kept whatever a later count settles.
CREATE TABLE disputed_lines (
  first_count_id TEXT NOT NULL REFERENCES counts(id),
  second_count_id TEXT NOT NULL REFERENCES counts(id),
  line_id TEXT NOT NULL REFERENCES configuration_lines(id),
  set_id TEXT NOT NULL REFERENCES sets(id),
  turn_id TEXT NOT NULL REFERENCES turns(id),
  first_pieces INTEGER NOT NULL,
  second_pieces INTEGER NOT NULL CHECK (second_pieces <> first_pieces),
  opened_at TEXT NOT NULL,
  settled_by_count_id TEXT REFERENCES counts(id),
  settled_at TEXT,
  PRIMARY KEY (first_count_id, second_count_id, line_id),
  CHECK ((settled_by_count_id IS NULL) = (settled_at IS NULL))
) STRICT, WITHOUT ROWID;
CREATE INDEX disputed_lines_open ON disputed_lines (set_id) WHERE settled_at IS NULL;
CREATE TRIGGER disputed_figures_are_kept BEFORE UPDATE ON disputed_lines
  WHEN new.first_pieces IS NOT old.first_pieces OR new.second_pieces IS NOT old.second_pieces
    OR new.line_id IS NOT old.line_id OR new.opened_at IS NOT old.opened_at OR old.settled_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'both figures of a dispute are kept'); END;
CREATE TRIGGER disputes_are_never_deleted BEFORE DELETE ON disputed_lines
  BEGIN SELECT raise(ABORT, 'both figures of a dispute are kept'); END;

-- Pieces taken out of a set as unfit: they go to repair or are discarded, and are never straightened.
CREATE TABLE aside_pieces (
  id TEXT PRIMARY KEY CHECK (id GLOB 'aside_*'),
  item_id TEXT NOT NULL REFERENCES items(id),
  set_id TEXT REFERENCES sets(id),
  line_id TEXT REFERENCES configuration_lines(id),
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  condition TEXT NOT NULL,
  route TEXT CHECK (route IN ('repair', 'discard')),
  found_by TEXT NOT NULL REFERENCES people(id),
  found_at TEXT NOT NULL,
  settled_by TEXT REFERENCES people(id),
  settled_at TEXT,
  outcome TEXT CHECK (outcome IN ('repaired', 'discarded', 'notRepairable'))
) STRICT;
CREATE INDEX aside_pieces_open ON aside_pieces (item_id) WHERE settled_at IS NULL;

-- What a set waits for. The finder is told when it is fixed.
CREATE TABLE refill_jobs (
  id TEXT PRIMARY KEY CHECK (id GLOB 'refill_*'),
  set_id TEXT NOT NULL REFERENCES sets(id),
  line_id TEXT NOT NULL REFERENCES configuration_lines(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  found_by TEXT NOT NULL REFERENCES people(id),
  opened_at TEXT NOT NULL,
  turn_id TEXT REFERENCES turns(id),
  fixed_by TEXT REFERENCES people(id),
  fixed_at TEXT,
  dropped_because TEXT,
  CHECK ((fixed_by IS NULL) = (fixed_at IS NULL))
) STRICT;
CREATE UNIQUE INDEX one_open_refill ON refill_jobs (set_id, line_id) WHERE fixed_at IS NULL AND dropped_because IS NULL;

-- Who let a short set go, why, for which case, with what beside it, and when that lapses.
CREATE TABLE short_decisions (
  id TEXT PRIMARY KEY CHECK (id GLOB 'decision_*'),
  set_id TEXT NOT NULL REFERENCES sets(id),
  turn_id TEXT NOT NULL REFERENCES turns(id),
  kind TEXT NOT NULL CHECK (kind IN ('backUps', 'withSubstitute', 'oneCase')),
  lines TEXT NOT NULL CHECK (json_valid(lines)),
  substitutes TEXT NOT NULL CHECK (json_valid(substitutes)),
  reason TEXT NOT NULL CHECK (length(reason) BETWEEN 1 AND 400),
  case_id TEXT REFERENCES cases(id),
  -- one for each person who stood for it: who, as what, with which words
  approvals TEXT NOT NULL CHECK (json_valid(approvals)),
  decided_at TEXT NOT NULL,
  lapses_at TEXT,
  lapsed_at TEXT,
  CHECK ((kind = 'oneCase') = (case_id IS NOT NULL))
) STRICT;
CREATE INDEX short_decisions_by_set ON short_decisions (set_id, turn_id);

-- What a person is told inside the program.
CREATE TABLE notices (
  id TEXT PRIMARY KEY CHECK (id GLOB 'notice_*'),
  person_id TEXT NOT NULL REFERENCES people(id),
  kind TEXT NOT NULL,
  detail TEXT NOT NULL CHECK (json_valid(detail)),
  href TEXT,
  told_at TEXT NOT NULL,
  seen_at TEXT
) STRICT;
CREATE INDEX notices_unseen ON notices (person_id, told_at) WHERE seen_at IS NULL;

-- What the database itself insists on, whatever the program asks.
CREATE TRIGGER packed_means_a_pack BEFORE UPDATE OF step ON sets
  WHEN new.step = 'packed' AND old.step <> 'packed' AND NOT EXISTS (
    SELECT 1 FROM packs WHERE packs.id = new.pack_id AND packs.set_id = new.id AND packs.state NOT IN ('opened', 'undone'))
  BEGIN SELECT raise(ABORT, 'a packed set has a pack'); END;
CREATE TRIGGER sterile_means_an_accepted_load BEFORE UPDATE OF step ON sets
  WHEN new.step = 'inSterileStore' AND old.step <> 'inSterileStore' AND NOT EXISTS (
    SELECT 1 FROM packs JOIN loads ON loads.id = packs.load_id
    WHERE packs.id = new.pack_id AND packs.set_id = new.id AND packs.state = 'sterile' AND loads.state = 'accepted')
  BEGIN SELECT raise(ABORT, 'only an accepted load makes a set sterile'); END;
CREATE TRIGGER open_means_no_pack BEFORE UPDATE OF step ON sets
  WHEN new.step IN ('comingBack', 'washing', 'onBench', 'shortAwaitingDecision') AND old.step <> new.step
    AND new.pack_id IS NOT NULL
  BEGIN SELECT raise(ABORT, 'an open set is in no pack'); END;
CREATE TRIGGER short_for_one_case_only BEFORE UPDATE OF step ON sets
  WHEN new.step = 'inTheatre' AND old.step <> 'inTheatre' AND EXISTS (
    SELECT 1 FROM packs WHERE packs.id = new.pack_id AND packs.for_case_id IS NOT NULL
      AND packs.for_case_id IS NOT new.case_id)
  BEGIN SELECT raise(ABORT, 'a set sent short goes to the case it was sent short for'); END;

-- Where sets and pouches lie. A place is renamed or withdrawn, never deleted: what lay there is on record.
ALTER TABLE places ADD COLUMN withdrawn_at TEXT;
ALTER TABLE places ADD COLUMN revision INTEGER NOT NULL DEFAULT 1 CHECK (revision > 0);
CREATE TRIGGER places_are_kept BEFORE DELETE ON places
  BEGIN SELECT raise(ABORT, 'places are never deleted'); END;
CREATE TRIGGER nothing_comes_to_a_withdrawn_place BEFORE UPDATE OF place_id ON sets
  WHEN new.place_id IS NOT NULL AND new.place_id IS NOT old.place_id
    AND (SELECT withdrawn_at FROM places WHERE id = new.place_id) IS NOT NULL
  BEGIN SELECT raise(ABORT, 'nothing is put in a place out of use'); END;

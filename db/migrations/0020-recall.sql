-- Recalls: what was called back and why, what was held for it, who had to know and did, and by which two people it was closed.

CREATE TABLE recalls (
  id TEXT PRIMARY KEY,
  number TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL CHECK (kind IN ('lot', 'item', 'set', 'load')),
  item_id TEXT REFERENCES items(id),
  lot TEXT,
  set_id TEXT REFERENCES sets(id),
  load_id TEXT REFERENCES loads(id),
  reason TEXT NOT NULL CHECK (reason <> ''),
  -- of the maker's or the authority's notice; NULL: none
  notice_reference TEXT,
  -- it holds nothing, and every screen and page of it says so
  is_rehearsal INTEGER NOT NULL CHECK (is_rehearsal IN (0, 1)),
  -- what was known as it was opened
  found TEXT NOT NULL CHECK (json_valid(found)),
  opened_by TEXT NOT NULL REFERENCES people(id),
  opened_at TEXT NOT NULL,
  closed_by TEXT REFERENCES people(id),
  closed_with TEXT REFERENCES people(id),
  closed_at TEXT,
  closed_because TEXT,
  -- the balance as it was closed
  balance TEXT CHECK (balance IS NULL OR json_valid(balance)),
  revision INTEGER NOT NULL,
  CHECK (CASE kind WHEN 'lot' THEN item_id IS NOT NULL AND lot IS NOT NULL
    WHEN 'item' THEN item_id IS NOT NULL WHEN 'set' THEN set_id IS NOT NULL ELSE load_id IS NOT NULL END),
  CHECK ((closed_by IS NULL) = (closed_at IS NULL) AND (closed_with IS NULL) = (closed_at IS NULL)
    AND (closed_because IS NULL) = (closed_at IS NULL)),
  CHECK (closed_by <> closed_with)
) STRICT;
CREATE INDEX recalls_open ON recalls (opened_at) WHERE closed_at IS NULL;
CREATE TRIGGER recalls_are_never_deleted BEFORE DELETE ON recalls
  BEGIN SELECT raise(ABORT, 'a recall is never deleted'); END;
CREATE TRIGGER closed_recalls_never_change BEFORE UPDATE ON recalls WHEN old.closed_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'a closed recall never changes'); END;

-- What was held as a recall was opened: a set, or a heap of the shelf; append-only.
CREATE TABLE recall_holds (
  recall_id TEXT NOT NULL REFERENCES recalls(id),
  set_id TEXT REFERENCES sets(id),
  stock_id TEXT REFERENCES stock(id),
  pieces INTEGER NOT NULL CHECK (pieces > 0),
  held_at TEXT NOT NULL,
  CHECK ((set_id IS NULL) <> (stock_id IS NULL))
) STRICT;
CREATE INDEX recall_holds_by_recall ON recall_holds (recall_id);
CREATE TRIGGER recall_holds_are_never_changed BEFORE UPDATE ON recall_holds
  BEGIN SELECT raise(ABORT, 'what a recall held is append-only'); END;
CREATE TRIGGER recall_holds_are_never_deleted BEFORE DELETE ON recall_holds
  BEGIN SELECT raise(ABORT, 'what a recall held is append-only'); END;

-- Who must know, and what they are asked to do; acknowledged by themselves.
CREATE TABLE recall_tasks (
  id TEXT PRIMARY KEY,
  recall_id TEXT NOT NULL REFERENCES recalls(id),
  person_id TEXT NOT NULL REFERENCES people(id),
  task TEXT NOT NULL CHECK (task IN ('lookAtCases', 'takeOffShelf', 'keepSetsHeld', 'know')),
  acknowledged_at TEXT,
  note TEXT,
  UNIQUE (recall_id, person_id, task)
) STRICT;
CREATE INDEX recall_tasks_waiting ON recall_tasks (person_id) WHERE acknowledged_at IS NULL;
CREATE TRIGGER acknowledgements_are_never_changed BEFORE UPDATE ON recall_tasks WHEN old.acknowledged_at IS NOT NULL
  BEGIN SELECT raise(ABORT, 'an acknowledgement is never changed'); END;
CREATE TRIGGER recall_tasks_are_never_deleted BEFORE DELETE ON recall_tasks
  BEGIN SELECT raise(ABORT, 'who had to know of a recall is kept'); END;

-- Pieces that came into slots without a lot, which no recall of their item can exclude.
CREATE INDEX piece_moves_of_unknown_lot ON piece_moves (item_id, done_at, to_set_id, act) WHERE lot IS NULL AND to_set_id IS NOT NULL;
-- The cases a pack went to.
CREATE INDEX case_picks_by_pack ON case_picks (pack_id) WHERE pack_id IS NOT NULL;
-- What a person did in a period, and the packs of a turn.
CREATE INDEX turn_steps_by_person ON turn_steps (person_id, done_at, turn_id, set_id, step);
CREATE INDEX packs_by_turn ON packs (turn_id) WHERE turn_id IS NOT NULL;

-- The journal of pieces: where every piece came from and went to, so that what was used, what lies on the shelf, what is ordered
-- and what a recall reaches are all read from one record.

-- One move of pieces of one item and one lot. A slot is a line of a set; a case holds single packs from their issue until it is
-- known what became of them; an end that is not named is outside (the maker, the patient, the bin).
CREATE TABLE piece_moves (
  seq INTEGER PRIMARY KEY,
  act TEXT NOT NULL CHECK (act IN ('opening', 'received', 'shelved', 'moved', 'refilled', 'carried', 'takenOut', 'issued', 'cameBack',
    'implanted', 'wasted', 'notFound', 'found', 'explained', 'setAside', 'repaired', 'discarded', 'sentBack')),
  item_id TEXT NOT NULL REFERENCES items(id),
  -- NULL: nobody knows
  lot TEXT,
  use_by TEXT,
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  owner TEXT NOT NULL CHECK (owner IN ('ours', 'consignment')),
  from_stock_id TEXT REFERENCES stock(id),
  from_set_id TEXT REFERENCES sets(id),
  from_line_id TEXT REFERENCES configuration_lines(id),
  to_stock_id TEXT REFERENCES stock(id),
  to_set_id TEXT REFERENCES sets(id),
  to_line_id TEXT REFERENCES configuration_lines(id),
  case_id TEXT REFERENCES cases(id),
  pick_id TEXT REFERENCES case_picks(id),
  aside_id TEXT REFERENCES aside_pieces(id),
  -- the single pack, or the sterile pack of the set the slot was in
  pack_id TEXT REFERENCES packs(id),
  reason TEXT,
  -- the entry, count, delivery, order line … this came of
  source TEXT,
  -- the price of one piece at that time; NULL: not known
  unit_pence INTEGER CHECK (unit_pence >= 0),
  person_id TEXT REFERENCES people(id),
  -- the hospital's own day, by which usage is counted
  done_on TEXT NOT NULL,
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL,
  CHECK ((from_set_id IS NULL) = (from_line_id IS NULL)),
  CHECK ((to_set_id IS NULL) = (to_line_id IS NULL)),
  CHECK (from_stock_id IS NULL OR from_set_id IS NULL),
  CHECK (to_stock_id IS NULL OR to_set_id IS NULL),
  CHECK (act NOT IN ('received', 'shelved', 'repaired', 'cameBack') OR to_stock_id IS NOT NULL),
  CHECK (act <> 'opening' OR to_stock_id IS NOT NULL OR to_set_id IS NOT NULL),
  CHECK (act <> 'found' OR to_stock_id IS NOT NULL OR to_set_id IS NOT NULL),
  CHECK (act <> 'moved' OR (from_stock_id IS NOT NULL AND to_stock_id IS NOT NULL)),
  CHECK (act <> 'carried' OR (from_set_id = to_set_id)),
  CHECK (act NOT IN ('refilled', 'explained') OR to_set_id IS NOT NULL),
  CHECK (act NOT IN ('takenOut', 'setAside') OR from_set_id IS NOT NULL),
  CHECK (act <> 'issued' OR (from_stock_id IS NOT NULL AND pick_id IS NOT NULL AND case_id IS NOT NULL)),
  CHECK (act <> 'sentBack' OR from_stock_id IS NOT NULL),
  CHECK (act NOT IN ('implanted', 'wasted', 'notFound') OR (to_stock_id IS NULL AND to_set_id IS NULL)),
  -- what is implanted is implanted in a case, from a slot or from what was issued to it
  CHECK (act <> 'implanted' OR (case_id IS NOT NULL AND (from_set_id IS NOT NULL OR pick_id IS NOT NULL)))
) STRICT;
CREATE INDEX piece_moves_by_lot ON piece_moves (lot, item_id, seq) WHERE lot IS NOT NULL;
CREATE INDEX piece_moves_by_item ON piece_moves (item_id, done_on, act, quantity);
CREATE INDEX piece_moves_into_slot ON piece_moves (to_set_id, item_id, seq) WHERE to_set_id IS NOT NULL;
CREATE INDEX piece_moves_out_of_slot ON piece_moves (from_set_id, item_id, seq) WHERE from_set_id IS NOT NULL;
CREATE INDEX piece_moves_by_case ON piece_moves (case_id, seq) WHERE case_id IS NOT NULL;
CREATE INDEX piece_moves_onto_heap ON piece_moves (to_stock_id, seq) WHERE to_stock_id IS NOT NULL;
CREATE INDEX piece_moves_off_heap ON piece_moves (from_stock_id, seq) WHERE from_stock_id IS NOT NULL;
CREATE INDEX piece_moves_by_day ON piece_moves (done_on, act);
CREATE TRIGGER piece_moves_are_never_changed BEFORE UPDATE ON piece_moves
  BEGIN SELECT raise(ABORT, 'the journal of pieces is append-only'); END;
CREATE TRIGGER piece_moves_are_never_deleted BEFORE DELETE ON piece_moves
  BEGIN SELECT raise(ABORT, 'the journal of pieces is append-only'); END;

-- Heaps that are used up stay on record; what is on the shelf is found without them.
CREATE INDEX stock_there ON stock (form, item_id) WHERE quantity > 0;

-- What lies in each slot by the journal; `set_contents` is what people counted there, and every count makes the two agree.
CREATE TABLE slot_holdings (
  set_id TEXT NOT NULL REFERENCES sets(id),
  line_id TEXT NOT NULL REFERENCES configuration_lines(id),
  quantity INTEGER NOT NULL CHECK (quantity >= 0),
  PRIMARY KEY (set_id, line_id)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER pieces_leave_a_slot AFTER INSERT ON piece_moves WHEN new.from_set_id IS NOT NULL
  BEGIN
    INSERT INTO slot_holdings (set_id, line_id, quantity) VALUES (new.from_set_id, new.from_line_id, 0)
      ON CONFLICT (set_id, line_id) DO NOTHING;
    UPDATE slot_holdings SET quantity = quantity - new.quantity
      WHERE set_id = new.from_set_id AND line_id = new.from_line_id;
  END;
CREATE TRIGGER pieces_come_into_a_slot AFTER INSERT ON piece_moves WHEN new.to_set_id IS NOT NULL
  BEGIN
    INSERT INTO slot_holdings (set_id, line_id, quantity) VALUES (new.to_set_id, new.to_line_id, new.quantity)
      ON CONFLICT (set_id, line_id) DO UPDATE SET quantity = quantity + excluded.quantity;
  END;

-- Usage of each item by month, so that a year of it is read in twelve rows.
CREATE TABLE usage_months (
  item_id TEXT NOT NULL REFERENCES items(id),
  month TEXT NOT NULL,
  implanted INTEGER NOT NULL DEFAULT 0,
  wasted INTEGER NOT NULL DEFAULT 0,
  not_found INTEGER NOT NULL DEFAULT 0,
  refilled INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (item_id, month)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER usage_is_counted_by_month AFTER INSERT ON piece_moves
  WHEN new.act IN ('implanted', 'wasted', 'notFound', 'explained', 'refilled')
  BEGIN
    INSERT INTO usage_months (item_id, month, implanted, wasted, not_found, refilled)
      VALUES (new.item_id, substr(new.done_on, 1, 7),
        iif(new.act = 'implanted', new.quantity, 0), iif(new.act = 'wasted', new.quantity, 0),
        iif(new.act = 'notFound', new.quantity, iif(new.act = 'explained', -new.quantity, 0)),
        iif(new.act = 'refilled', new.quantity, 0))
      ON CONFLICT (item_id, month) DO UPDATE SET implanted = implanted + excluded.implanted, wasted = wasted + excluded.wasted,
        not_found = not_found + excluded.not_found, refilled = refilled + excluded.refilled;
  END;

-- What lay there when the journal began. In a slot nobody knows of which lot it is.
INSERT INTO piece_moves (act, item_id, lot, use_by, quantity, owner, to_stock_id, done_on, done_at, entered_at)
  SELECT 'opening', item_id, lot, use_by, quantity, owner, id,
    date('now'), strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), strftime('%Y-%m-%dT%H:%M:%fZ', 'now')
  FROM stock WHERE quantity > 0;
INSERT INTO piece_moves (act, item_id, quantity, owner, to_set_id, to_line_id, done_on, done_at, entered_at)
  SELECT 'opening', line.item_id, held.found, 'ours', held.set_id, held.line_id,
    date('now'), strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), strftime('%Y-%m-%dT%H:%M:%fZ', 'now')
  FROM set_contents held JOIN configuration_lines line ON line.id = held.line_id WHERE held.found > 0;
INSERT INTO slot_holdings (set_id, line_id, quantity)
  SELECT set_id, line_id, 0 FROM set_contents WHERE found = 0;

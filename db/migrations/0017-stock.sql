-- The shelf as its keeper works with it: what came in, and what was counted.

-- One delivery, received whole or not at all. Its id is made where it was entered.
CREATE TABLE deliveries (
  id TEXT PRIMARY KEY CHECK (id GLOB 'delivery_*'),
  supplier TEXT NOT NULL CHECK (length(supplier) BETWEEN 1 AND 80),
  -- the number on the delivery note
  reference TEXT NOT NULL CHECK (length(reference) BETWEEN 1 AND 60),
  -- the hospital's own day
  arrived_on TEXT NOT NULL,
  received_by TEXT NOT NULL REFERENCES people(id),
  received_at TEXT NOT NULL
) STRICT;
CREATE INDEX deliveries_by_time ON deliveries (received_at);
CREATE INDEX deliveries_by_reference ON deliveries (reference COLLATE NOCASE);
CREATE TRIGGER deliveries_never_change BEFORE UPDATE ON deliveries
  BEGIN SELECT raise(ABORT, 'what was received is kept as it was entered'); END;
CREATE TRIGGER deliveries_are_never_deleted BEFORE DELETE ON deliveries
  BEGIN SELECT raise(ABORT, 'deliveries are never deleted'); END;

CREATE TABLE delivery_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'deliveryLine_*'),
  delivery_id TEXT NOT NULL REFERENCES deliveries(id),
  line_no INTEGER NOT NULL CHECK (line_no > 0),
  item_id TEXT NOT NULL REFERENCES items(id),
  form TEXT NOT NULL CHECK (form IN ('sterilePacked', 'unsterile')),
  -- NULL: none is on the pack
  lot TEXT,
  use_by TEXT,
  -- as typed: packs of so many pieces, or single pieces
  count INTEGER NOT NULL CHECK (count > 0),
  pieces_each INTEGER NOT NULL CHECK (pieces_each > 0),
  owner TEXT NOT NULL CHECK (owner IN ('ours', 'consignment')),
  place_id TEXT NOT NULL REFERENCES places(id),
  held_because TEXT,
  -- the heap it was put on
  stock_id TEXT NOT NULL REFERENCES stock(id),
  scan_id TEXT,
  -- the line of an order it answers, where it does
  order_line_id TEXT,
  UNIQUE (delivery_id, line_no)
) STRICT;
CREATE INDEX delivery_lines_by_order ON delivery_lines (order_line_id) WHERE order_line_id IS NOT NULL;
CREATE INDEX delivery_lines_by_lot ON delivery_lines (item_id, lot);
CREATE TRIGGER delivery_lines_never_change BEFORE UPDATE ON delivery_lines
  WHEN new.order_line_id IS old.order_line_id OR old.order_line_id IS NOT NULL
  BEGIN SELECT raise(ABORT, 'what was received is kept as it was entered'); END;
CREATE TRIGGER delivery_lines_are_never_deleted BEFORE DELETE ON delivery_lines
  BEGIN SELECT raise(ABORT, 'deliveries are never deleted'); END;

-- A blind count of heaps at one place: one person counts, and, where the difference is large, another counts again.
CREATE TABLE stock_counts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'stockCount_*'),
  place_id TEXT NOT NULL REFERENCES places(id),
  -- 'all': whatever lies there
  count_class TEXT NOT NULL CHECK (count_class IN ('A', 'B', 'C', 'all')),
  -- up to the larger of the two nobody counts again, as the setting was when it began
  tolerance_pieces INTEGER NOT NULL CHECK (tolerance_pieces >= 0),
  tolerance_percent INTEGER NOT NULL CHECK (tolerance_percent BETWEEN 0 AND 100),
  begun_by TEXT NOT NULL REFERENCES people(id),
  begun_at TEXT NOT NULL,
  closed_at TEXT,
  recount_by TEXT REFERENCES people(id),
  recount_begun_at TEXT,
  recount_closed_at TEXT,
  abandoned_by TEXT REFERENCES people(id),
  abandoned_at TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((recount_by IS NULL) = (recount_begun_at IS NULL)),
  CHECK (recount_by IS NULL OR (closed_at IS NOT NULL AND recount_by <> begun_by)),
  CHECK (recount_closed_at IS NULL OR recount_by IS NOT NULL),
  CHECK ((abandoned_at IS NULL) = (abandoned_by IS NULL)),
  CHECK (abandoned_at IS NULL OR closed_at IS NULL)
) STRICT;
CREATE INDEX stock_counts_open ON stock_counts (place_id) WHERE closed_at IS NULL AND abandoned_at IS NULL;
CREATE TRIGGER a_count_of_stock_ends_once BEFORE UPDATE ON stock_counts
  WHEN old.abandoned_at IS NOT NULL OR (old.closed_at IS NOT NULL AND new.closed_at IS NOT old.closed_at)
    OR (old.recount_closed_at IS NOT NULL AND new.recount_closed_at IS NOT old.recount_closed_at)
    OR new.begun_by IS NOT old.begun_by OR (old.recount_closed_at IS NOT NULL AND new.recount_by IS NOT old.recount_by)
  BEGIN SELECT raise(ABORT, 'a count that has ended stays as it is'); END;
CREATE TRIGGER counts_of_stock_are_kept BEFORE DELETE ON stock_counts
  BEGIN SELECT raise(ABORT, 'counts are never deleted'); END;

-- What is to be counted, or was found beside it. How much there should be is not here: it is taken with each figure.
CREATE TABLE stock_count_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'stockCountLine_*'),
  count_id TEXT NOT NULL REFERENCES stock_counts(id),
  -- NULL: lay there and was on no record
  stock_id TEXT REFERENCES stock(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  form TEXT NOT NULL CHECK (form IN ('pouch', 'sterilePacked', 'unsterile')),
  lot TEXT,
  use_by TEXT,
  owner TEXT NOT NULL CHECK (owner IN ('ours', 'consignment')),
  -- found there by the counter, not listed
  added INTEGER NOT NULL CHECK (added IN (0, 1)),
  recount INTEGER NOT NULL DEFAULT 0 CHECK (recount IN (0, 1)),
  decision TEXT CHECK (decision IN ('accepted', 'left')),
  decided_by TEXT REFERENCES people(id),
  decided_at TEXT,
  because TEXT,
  CHECK (added = 1 OR stock_id IS NOT NULL),
  CHECK ((decision IS NULL) = (decided_by IS NULL) AND (decision IS NULL) = (decided_at IS NULL)),
  UNIQUE (count_id, stock_id)
) STRICT;
CREATE INDEX stock_count_lines_by_heap ON stock_count_lines (stock_id, count_id);
CREATE TRIGGER a_decided_difference_stays BEFORE UPDATE ON stock_count_lines WHEN old.decision IS NOT NULL
  BEGIN SELECT raise(ABORT, 'a difference is decided once'); END;

-- Every figure anybody gave; the last one of a round is the one that counts.
CREATE TABLE stock_count_figures (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (id GLOB 'entry_*'),
  line_id TEXT NOT NULL REFERENCES stock_count_lines(id),
  round INTEGER NOT NULL CHECK (round IN (1, 2)),
  pieces INTEGER NOT NULL CHECK (pieces >= 0),
  -- what lay on the shelf by the record at that moment, and how far the journal of pieces went
  expected INTEGER NOT NULL CHECK (expected >= 0),
  journal_seq INTEGER NOT NULL CHECK (journal_seq >= 0),
  person_id TEXT NOT NULL REFERENCES people(id),
  session_id TEXT REFERENCES sessions(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX stock_count_figures_by_line ON stock_count_figures (line_id, round, seq);
CREATE TRIGGER figures_of_stock_are_never_changed BEFORE UPDATE ON stock_count_figures
  BEGIN SELECT raise(ABORT, 'figures are append-only'); END;
CREATE TRIGGER figures_of_stock_are_never_deleted BEFORE DELETE ON stock_count_figures
  BEGIN SELECT raise(ABORT, 'figures are append-only'); END;
CREATE INDEX stock_count_figures_by_session ON stock_count_figures (session_id);

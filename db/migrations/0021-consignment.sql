-- Consignment: whose it is that lies here and is not ours, and what of it was used.

-- The owner of consigned pieces; NULL: nobody has stated it. Pieces in a case or on another shelf are their heap's.
ALTER TABLE stock ADD COLUMN lender_id TEXT REFERENCES lenders(id) CHECK (lender_id IS NULL OR owner = 'consignment');
CREATE INDEX stock_by_lender ON stock (lender_id, item_id) WHERE lender_id IS NOT NULL;
CREATE INDEX stock_of_nobody_stated ON stock (item_id, lot) WHERE owner = 'consignment' AND lender_id IS NULL;
ALTER TABLE delivery_lines ADD COLUMN lender_id TEXT REFERENCES lenders(id) CHECK (lender_id IS NULL OR owner = 'consignment');
-- Whether pieces are kept on consignment: what is used of them is replaced by its owner and never bought. NULL falls back.
ALTER TABLE supply_terms ADD COLUMN consigned INTEGER CHECK (consigned IN (0, 1));
-- What was picked from a heap, and so where its pieces went.
CREATE INDEX case_picks_by_heap ON case_picks (stock_id) WHERE stock_id IS NOT NULL;

-- What was used of one owner's stock since the usage order before it.
CREATE TABLE usage_orders (
  id TEXT PRIMARY KEY CHECK (id GLOB 'usageOrder_*'),
  number TEXT NOT NULL UNIQUE CHECK (number GLOB 'UO-[0-9][0-9][0-9][0-9]*'),
  lender_id TEXT NOT NULL REFERENCES lenders(id),
  state TEXT NOT NULL CHECK (state IN ('made', 'approved', 'sent', 'withdrawn')),
  made_by TEXT NOT NULL REFERENCES people(id),
  made_at TEXT NOT NULL,
  -- how far the journal of pieces went as it was made
  journal_seq INTEGER NOT NULL CHECK (journal_seq >= 0),
  -- pieces out of slots that may have been the owner's, as they stood then: shown, not charged
  uncertain TEXT NOT NULL CHECK (json_valid(uncertain)),
  approved_by TEXT REFERENCES people(id),
  approved_at TEXT,
  sent_by TEXT REFERENCES people(id),
  sent_at TEXT,
  sent_how TEXT CHECK (length(sent_how) BETWEEN 1 AND 300),
  withdrawn_by TEXT REFERENCES people(id),
  withdrawn_at TEXT,
  withdrawn_because TEXT,
  -- nothing more is expected in replacement of it
  settled_by TEXT REFERENCES people(id),
  settled_at TEXT,
  settled_because TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((approved_at IS NULL) = (approved_by IS NULL)),
  CHECK (state NOT IN ('approved', 'sent') OR approved_at IS NOT NULL),
  CHECK (state <> 'made' OR approved_at IS NULL),
  CHECK ((state = 'sent') = (sent_at IS NOT NULL)),
  CHECK ((sent_at IS NULL) = (sent_by IS NULL) AND (sent_at IS NULL) = (sent_how IS NULL)),
  CHECK ((state = 'withdrawn') = (withdrawn_at IS NOT NULL)),
  CHECK ((withdrawn_at IS NULL) = (withdrawn_by IS NULL) AND (withdrawn_at IS NULL) = (withdrawn_because IS NULL)),
  CHECK ((settled_at IS NULL) = (settled_by IS NULL) AND (settled_at IS NULL) = (settled_because IS NULL)),
  CHECK (settled_at IS NULL OR state = 'sent')
) STRICT;
CREATE UNIQUE INDEX one_usage_order_is_made_at_a_time ON usage_orders (lender_id) WHERE state = 'made';
CREATE INDEX usage_orders_by_lender ON usage_orders (lender_id, made_at);
CREATE TRIGGER usage_orders_are_kept BEFORE DELETE ON usage_orders
  BEGIN SELECT raise(ABORT, 'usage orders are never deleted'); END;
CREATE TRIGGER usage_orders_go_one_way BEFORE UPDATE ON usage_orders
  WHEN new.number IS NOT old.number OR new.lender_id IS NOT old.lender_id OR new.made_by IS NOT old.made_by
    OR new.made_at IS NOT old.made_at OR new.journal_seq IS NOT old.journal_seq OR new.uncertain IS NOT old.uncertain
    OR old.state = 'withdrawn' OR old.settled_at IS NOT NULL
    OR (old.state = 'sent' AND (new.state <> 'sent' OR new.sent_at IS NOT old.sent_at OR new.sent_how IS NOT old.sent_how))
    OR (old.state = 'approved' AND new.state = 'made') OR (old.state = 'made' AND new.state = 'sent')
    OR (old.approved_at IS NOT NULL AND (new.approved_at IS NOT old.approved_at OR new.approved_by IS NOT old.approved_by))
  BEGIN SELECT raise(ABORT, 'a usage order goes from made to approved to sent, and what was said of it stays'); END;

CREATE TABLE usage_order_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'usageLine_*'),
  order_id TEXT NOT NULL REFERENCES usage_orders(id),
  line_no INTEGER NOT NULL CHECK (line_no > 0),
  -- 'takenBack': an earlier line of this move was not so, or what was not found was found again
  way TEXT NOT NULL CHECK (way IN ('used', 'takenBack')),
  move_seq INTEGER NOT NULL REFERENCES piece_moves(seq),
  item_id TEXT NOT NULL REFERENCES items(id),
  lot TEXT,
  use_by TEXT,
  pieces INTEGER NOT NULL CHECK (pieces > 0),
  outcome TEXT NOT NULL CHECK (outcome IN ('implanted', 'openedNotImplanted', 'droppedOrDamaged', 'pastUseBy', 'notFound', 'foundAgain')),
  case_id TEXT REFERENCES cases(id),
  done_on TEXT NOT NULL,
  -- by what it is known to be the owner's
  known_by TEXT NOT NULL CHECK (known_by IN ('heap', 'lotRead', 'othersTooFew')),
  -- what the owner is asked for; NULL: nobody has said yet
  replace INTEGER CHECK (replace IN (0, 1)),
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
  UNIQUE (order_id, line_no),
  CHECK (way = 'used' OR replace IS NULL)
) STRICT;
-- However many people make an order at once: a move is charged once, and taken back once.
CREATE UNIQUE INDEX a_move_is_on_one_usage_order ON usage_order_lines (move_seq, way) WHERE withdrawn = 0;
CREATE INDEX usage_order_lines_by_item ON usage_order_lines (item_id, order_id);
CREATE TRIGGER usage_lines_are_kept BEFORE DELETE ON usage_order_lines
  BEGIN SELECT raise(ABORT, 'lines of usage orders are never deleted'); END;
CREATE TRIGGER usage_lines_never_change BEFORE UPDATE ON usage_order_lines
  WHEN new.order_id IS NOT old.order_id OR new.line_no IS NOT old.line_no OR new.way IS NOT old.way
    OR new.move_seq IS NOT old.move_seq OR new.item_id IS NOT old.item_id OR new.lot IS NOT old.lot
    OR new.pieces IS NOT old.pieces OR new.outcome IS NOT old.outcome OR new.case_id IS NOT old.case_id
    OR new.done_on IS NOT old.done_on OR new.known_by IS NOT old.known_by OR old.withdrawn = 1
    OR (new.replace IS NOT old.replace AND (SELECT state FROM usage_orders WHERE id = old.order_id) <> 'made')
    OR (new.withdrawn = 1 AND (SELECT state FROM usage_orders WHERE id = old.order_id) <> 'withdrawn')
  BEGIN SELECT raise(ABORT, 'what a usage order says was used never changes'); END;
CREATE TRIGGER only_a_new_usage_order_takes_lines BEFORE INSERT ON usage_order_lines
  WHEN (SELECT state FROM usage_orders WHERE id = new.order_id) <> 'made'
  BEGIN SELECT raise(ABORT, 'a usage order takes no more lines once it is approved'); END;
CREATE TRIGGER what_was_taken_back_is_not_charged BEFORE INSERT ON usage_order_lines
  WHEN new.way = 'used' AND EXISTS (SELECT 1 FROM moves_taken_back WHERE move_seq = new.move_seq)
  BEGIN SELECT raise(ABORT, 'a move that was taken back is not charged'); END;
CREATE TRIGGER only_what_was_charged_is_taken_back BEFORE INSERT ON usage_order_lines
  WHEN new.way = 'takenBack' AND new.outcome <> 'foundAgain' AND NOT EXISTS (SELECT 1 FROM usage_order_lines line
    WHERE line.move_seq = new.move_seq AND line.way = 'used' AND line.withdrawn = 0 AND line.order_id <> new.order_id)
  BEGIN SELECT raise(ABORT, 'only what an earlier order charged is taken back'); END;
CREATE TRIGGER what_a_later_order_takes_back_stands BEFORE UPDATE OF state ON usage_orders
  WHEN new.state = 'withdrawn' AND EXISTS (SELECT 1 FROM usage_order_lines own JOIN usage_order_lines later
    ON later.move_seq = own.move_seq AND later.way = 'takenBack' AND later.withdrawn = 0
    WHERE own.order_id = old.id AND own.way = 'used' AND later.order_id <> old.id)
  BEGIN SELECT raise(ABORT, 'a later usage order takes lines of this one back'); END;

-- Whose stock it is may be stated, and stated again, until a usage order has told its owner of it.
CREATE TRIGGER an_owner_who_was_told_stays BEFORE UPDATE OF lender_id ON stock
  WHEN old.lender_id IS NOT NULL AND new.lender_id IS NOT old.lender_id AND EXISTS (
    SELECT 1 FROM usage_order_lines line JOIN usage_orders o ON o.id = line.order_id
    WHERE line.withdrawn = 0 AND o.lender_id = old.lender_id AND line.item_id = old.item_id AND line.lot IS old.lot)
  BEGIN SELECT raise(ABORT, 'a usage order has told this owner of pieces of that lot'); END;

-- What an owner says lies here, or was counted here, set beside our record of that day, lot by lot: a dated record that people close.
CREATE TABLE reconciliations (
  id TEXT PRIMARY KEY CHECK (id GLOB 'reconciliation_*'),
  number TEXT NOT NULL UNIQUE CHECK (number GLOB 'RL-[0-9][0-9][0-9][0-9]*'),
  lender_id TEXT NOT NULL REFERENCES lenders(id),
  how TEXT NOT NULL CHECK (how IN ('list', 'count')),
  -- the day the list speaks of, by the hospital's calendar
  listed_on TEXT NOT NULL,
  entered_by TEXT NOT NULL REFERENCES people(id),
  entered_at TEXT NOT NULL,
  closed_by TEXT REFERENCES people(id),
  -- where a difference stayed unexplained
  closed_with TEXT REFERENCES people(id),
  closed_at TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((closed_at IS NULL) = (closed_by IS NULL)),
  CHECK (closed_with IS NULL OR (closed_by IS NOT NULL AND closed_with <> closed_by))
) STRICT;
CREATE INDEX reconciliations_by_lender ON reconciliations (lender_id, entered_at);
CREATE TRIGGER reconciliations_are_kept BEFORE DELETE ON reconciliations
  BEGIN SELECT raise(ABORT, 'reconciliations are never deleted'); END;
CREATE TRIGGER closed_reconciliations_stay BEFORE UPDATE ON reconciliations
  WHEN old.closed_at IS NOT NULL OR new.number IS NOT old.number OR new.lender_id IS NOT old.lender_id OR new.how IS NOT old.how
    OR new.listed_on IS NOT old.listed_on OR new.entered_by IS NOT old.entered_by OR new.entered_at IS NOT old.entered_at
  BEGIN SELECT raise(ABORT, 'a reconciliation is entered once, and never changes once it is closed'); END;

CREATE TABLE reconciliation_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'reconciliationLine_*'),
  reconciliation_id TEXT NOT NULL REFERENCES reconciliations(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  lot TEXT,
  -- NULL: the lot is not on the list
  listed INTEGER CHECK (listed >= 0),
  on_shelf INTEGER NOT NULL,
  with_cases INTEGER NOT NULL,
  in_slots INTEGER NOT NULL,
  difference INTEGER NOT NULL,
  -- as `lib/consignment/reconcile.ts` has it
  explained TEXT NOT NULL CHECK (json_valid(explained)),
  unexplained INTEGER NOT NULL,
  because TEXT CHECK (length(because) BETWEEN 1 AND 300),
  because_by TEXT REFERENCES people(id),
  because_at TEXT,
  CHECK ((because IS NULL) = (because_by IS NULL) AND (because IS NULL) = (because_at IS NULL)),
  CHECK (because IS NULL OR unexplained <> 0)
) STRICT;
CREATE UNIQUE INDEX a_lot_is_reconciled_once ON reconciliation_lines (reconciliation_id, item_id, coalesce(lot, ''));
CREATE TRIGGER reconciliation_lines_are_kept BEFORE DELETE ON reconciliation_lines
  BEGIN SELECT raise(ABORT, 'lines of reconciliations are never deleted'); END;
CREATE TRIGGER what_was_reconciled_stays BEFORE UPDATE ON reconciliation_lines
  WHEN new.reconciliation_id IS NOT old.reconciliation_id OR new.item_id IS NOT old.item_id OR new.lot IS NOT old.lot
    OR new.listed IS NOT old.listed OR new.on_shelf IS NOT old.on_shelf OR new.with_cases IS NOT old.with_cases
    OR new.in_slots IS NOT old.in_slots OR new.difference IS NOT old.difference OR new.explained IS NOT old.explained
    OR new.unexplained IS NOT old.unexplained
    OR (SELECT closed_at FROM reconciliations WHERE id = old.reconciliation_id) IS NOT NULL
  BEGIN SELECT raise(ABORT, 'what was set side by side never changes; only the reason of a difference is written'); END;
-- What stays unexplained has a reason, and two people who stand for it.
CREATE TRIGGER unexplained_is_closed_by_two BEFORE UPDATE OF closed_at ON reconciliations
  WHEN new.closed_at IS NOT NULL AND EXISTS (SELECT 1 FROM reconciliation_lines line
    WHERE line.reconciliation_id = old.id AND line.unexplained <> 0 AND (line.because IS NULL OR new.closed_with IS NULL))
  BEGIN SELECT raise(ABORT, 'what stays unexplained has a reason, and is closed by two'); END;

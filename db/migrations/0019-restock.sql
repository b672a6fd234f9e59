-- Restock: what is agreed with makers, proposals with their reasons, orders, and what came of each of them.

-- What holds for everything of a maker, or for one item; NULL falls back to the maker's, then to the hospital's setting. A lead
-- time that nobody has stated stays unknown.
CREATE TABLE supply_terms (
  id TEXT PRIMARY KEY CHECK (id GLOB 'terms_*'),
  maker_id TEXT UNIQUE REFERENCES makers(id),
  item_id TEXT UNIQUE REFERENCES items(id),
  lead_days INTEGER CHECK (lead_days BETWEEN 0 AND 730),
  lead_sd_days INTEGER CHECK (lead_sd_days BETWEEN 0 AND 180),
  review_days INTEGER CHECK (review_days BETWEEN 1 AND 365),
  service_percent REAL CHECK (service_percent BETWEEN 50 AND 99.9),
  shelf_life_days INTEGER CHECK (shelf_life_days BETWEEN 1 AND 7300),
  changed_by TEXT REFERENCES people(id),
  changed_at TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((maker_id IS NULL) <> (item_id IS NULL))
) STRICT;

CREATE TABLE restocks (
  id TEXT PRIMARY KEY CHECK (id GLOB 'restock_*'),
  number TEXT NOT NULL UNIQUE CHECK (number GLOB 'RS-[0-9][0-9][0-9][0-9]*'),
  state TEXT NOT NULL CHECK (state IN ('proposed', 'approved', 'superseded', 'turnedDown')),
  proposed_by TEXT NOT NULL REFERENCES people(id),
  proposed_at TEXT NOT NULL,
  -- how many items were looked at, how many of them need nothing, and of how many nothing is on record
  looked_at INTEGER NOT NULL CHECK (looked_at >= 0),
  enough INTEGER NOT NULL CHECK (enough >= 0),
  without_use INTEGER NOT NULL CHECK (without_use >= 0),
  settings TEXT NOT NULL CHECK (json_valid(settings)),
  decided_by TEXT REFERENCES people(id),
  decided_at TEXT,
  because TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  CHECK ((state = 'proposed') = (decided_at IS NULL)),
  CHECK (state NOT IN ('approved', 'turnedDown') OR decided_by IS NOT NULL),
  CHECK (state <> 'turnedDown' OR because IS NOT NULL)
) STRICT;
CREATE UNIQUE INDEX one_open_proposal ON restocks (state) WHERE state = 'proposed';
CREATE TRIGGER decided_restocks_stay BEFORE UPDATE ON restocks WHEN old.state <> 'proposed'
  BEGIN SELECT raise(ABORT, 'a proposal that was decided on never changes'); END;
CREATE TRIGGER restocks_are_kept BEFORE DELETE ON restocks
  BEGIN SELECT raise(ABORT, 'proposals are never deleted'); END;

CREATE TABLE restock_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'restockLine_*'),
  restock_id TEXT NOT NULL REFERENCES restocks(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  maker_id TEXT NOT NULL REFERENCES makers(id),
  must_have_class INTEGER CHECK (must_have_class BETWEEN 1 AND 4),
  proposed INTEGER NOT NULL CHECK (proposed >= 0),
  pack_of INTEGER NOT NULL CHECK (pack_of > 0),
  unit_pence INTEGER CHECK (unit_pence >= 0),
  on_hand INTEGER NOT NULL CHECK (on_hand >= 0),
  on_order INTEGER NOT NULL CHECK (on_order >= 0),
  committed INTEGER NOT NULL CHECK (committed >= 0),
  to_refill INTEGER NOT NULL CHECK (to_refill >= 0),
  sentence TEXT NOT NULL,
  -- what the calculation was asked and said, its working, and what was missing: as it was when it was proposed
  input TEXT NOT NULL CHECK (json_valid(input)),
  answer TEXT CHECK (answer IS NULL OR json_valid(answer)),
  working TEXT NOT NULL CHECK (json_valid(working)),
  missing TEXT NOT NULL CHECK (json_valid(missing)),
  -- what was approved of it, and why where that is another number; NULL until somebody decides
  approved INTEGER CHECK (approved >= 0),
  changed_because TEXT,
  UNIQUE (restock_id, item_id),
  CHECK (proposed % pack_of = 0),
  CHECK (approved IS NULL OR approved % pack_of = 0),
  CHECK (approved IS NULL OR approved = proposed OR changed_because IS NOT NULL)
) STRICT;
CREATE TRIGGER proposed_lines_stay BEFORE UPDATE ON restock_lines
  WHEN old.approved IS NOT NULL OR new.proposed IS NOT old.proposed OR new.sentence IS NOT old.sentence
    OR new.answer IS NOT old.answer OR new.input IS NOT old.input OR new.item_id IS NOT old.item_id OR new.restock_id IS NOT old.restock_id
    OR new.maker_id IS NOT old.maker_id OR new.pack_of IS NOT old.pack_of OR new.unit_pence IS NOT old.unit_pence
  BEGIN SELECT raise(ABORT, 'what was proposed, and what was approved of it, never changes'); END;
CREATE TRIGGER proposed_lines_are_kept BEFORE DELETE ON restock_lines
  BEGIN SELECT raise(ABORT, 'lines of proposals are never deleted'); END;

CREATE TABLE supply_orders (
  id TEXT PRIMARY KEY CHECK (id GLOB 'order_*'),
  number TEXT NOT NULL UNIQUE CHECK (number GLOB 'OR-[0-9][0-9][0-9][0-9]*'),
  restock_id TEXT NOT NULL REFERENCES restocks(id),
  maker_id TEXT NOT NULL REFERENCES makers(id),
  state TEXT NOT NULL CHECK (state IN ('open', 'closed')),
  ordered_by TEXT NOT NULL REFERENCES people(id),
  ordered_at TEXT NOT NULL,
  -- by the lead time known then; NULL: not known
  expected_on TEXT,
  closed_by TEXT REFERENCES people(id),
  closed_at TEXT,
  closed_because TEXT,
  revision INTEGER NOT NULL CHECK (revision > 0),
  UNIQUE (restock_id, maker_id),
  CHECK ((state = 'closed') = (closed_at IS NOT NULL)),
  CHECK ((closed_at IS NULL) = (closed_by IS NULL))
) STRICT;
CREATE INDEX supply_orders_by_state ON supply_orders (state);
CREATE TRIGGER closed_orders_stay BEFORE UPDATE ON supply_orders WHEN old.state = 'closed'
  BEGIN SELECT raise(ABORT, 'an order that is closed never changes'); END;
CREATE TRIGGER supply_orders_are_kept BEFORE DELETE ON supply_orders
  BEGIN SELECT raise(ABORT, 'orders are never deleted'); END;

CREATE TABLE supply_order_lines (
  id TEXT PRIMARY KEY CHECK (id GLOB 'orderLine_*'),
  order_id TEXT NOT NULL REFERENCES supply_orders(id),
  restock_line_id TEXT NOT NULL UNIQUE REFERENCES restock_lines(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  ordered INTEGER NOT NULL CHECK (ordered > 0),
  pack_of INTEGER NOT NULL CHECK (pack_of > 0),
  unit_pence INTEGER CHECK (unit_pence >= 0),
  UNIQUE (order_id, item_id),
  CHECK (ordered % pack_of = 0)
) STRICT;
CREATE INDEX supply_order_lines_by_item ON supply_order_lines (item_id);
CREATE TRIGGER ordered_lines_stay BEFORE UPDATE ON supply_order_lines
  BEGIN SELECT raise(ABORT, 'what was ordered never changes'); END;
CREATE TRIGGER ordered_lines_are_kept BEFORE DELETE ON supply_order_lines
  BEGIN SELECT raise(ABORT, 'lines of orders are never deleted'); END;

-- One part of a line that came: so many pieces of one lot and use-by, put on one heap.
CREATE TABLE supply_order_parts (
  id TEXT PRIMARY KEY CHECK (id GLOB 'orderPart_*'),
  order_line_id TEXT NOT NULL REFERENCES supply_order_lines(id),
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  -- NULL: the pack states none
  lot TEXT,
  use_by TEXT,
  place_id TEXT NOT NULL REFERENCES places(id),
  stock_id TEXT NOT NULL REFERENCES stock(id),
  person_id TEXT NOT NULL REFERENCES people(id),
  done_at TEXT NOT NULL,
  entered_at TEXT NOT NULL
) STRICT;
CREATE INDEX supply_order_parts_by_line ON supply_order_parts (order_line_id);
CREATE TRIGGER no_more_than_ordered BEFORE INSERT ON supply_order_parts
  WHEN new.quantity + (SELECT coalesce(sum(quantity), 0) FROM supply_order_parts WHERE order_line_id = new.order_line_id)
    > (SELECT ordered FROM supply_order_lines WHERE id = new.order_line_id)
  BEGIN SELECT raise(ABORT, 'no more of a line comes than was ordered'); END;
CREATE TRIGGER nothing_comes_after_the_end BEFORE INSERT ON supply_order_parts
  WHEN (SELECT o.state FROM supply_order_lines l JOIN supply_orders o ON o.id = l.order_id WHERE l.id = new.order_line_id) <> 'open'
  BEGIN SELECT raise(ABORT, 'nothing comes on an order that is closed'); END;
CREATE TRIGGER parts_never_change BEFORE UPDATE ON supply_order_parts
  BEGIN SELECT raise(ABORT, 'what came on an order never changes'); END;
CREATE TRIGGER parts_are_kept BEFORE DELETE ON supply_order_parts
  BEGIN SELECT raise(ABORT, 'what came on an order is never deleted'); END;
-- An order of which not all came is closed with a reason.
CREATE TRIGGER closed_with_a_reason BEFORE UPDATE OF state ON supply_orders
  WHEN new.state = 'closed' AND new.closed_because IS NULL AND EXISTS (
    SELECT 1 FROM supply_order_lines l WHERE l.order_id = new.id AND l.ordered >
      (SELECT coalesce(sum(p.quantity), 0) FROM supply_order_parts p WHERE p.order_line_id = l.id))
  BEGIN SELECT raise(ABORT, 'an order of which not all came is closed with a reason'); END;

-- Recalls of any age: the record of a slot is read from the day a lot came into it, and no further back.

-- A slot in the order in which things were done, with all that a trace reads of it.
DROP INDEX piece_moves_into_slot;
CREATE INDEX piece_moves_into_slot ON piece_moves (to_set_id, item_id, done_at, seq, act, quantity, lot, reason)
  WHERE to_set_id IS NOT NULL;
DROP INDEX piece_moves_out_of_slot;
CREATE INDEX piece_moves_out_of_slot ON piece_moves (from_set_id, item_id, done_at, seq, act, quantity, lot, case_id)
  WHERE from_set_id IS NOT NULL;

-- From when on there is more to the record of a slot than a count of its pieces: a lot was read as it left; what was not found
-- was explained; or, in the order in which things were done, more had left than had come by then. Before that, any piece that
-- lay there may be any that came.
CREATE TABLE slot_knots (
  set_id TEXT NOT NULL REFERENCES sets(id),
  item_id TEXT NOT NULL REFERENCES items(id),
  since_at TEXT NOT NULL,
  PRIMARY KEY (set_id, item_id)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER a_lot_is_read_out_of_a_slot AFTER INSERT ON piece_moves
  WHEN new.from_set_id IS NOT NULL AND new.lot IS NOT NULL AND new.act <> 'carried'
  BEGIN
    INSERT INTO slot_knots (set_id, item_id, since_at) VALUES (new.from_set_id, new.item_id, new.done_at)
      ON CONFLICT (set_id, item_id) DO UPDATE SET since_at = min(since_at, excluded.since_at);
  END;
CREATE TRIGGER a_slot_is_explained AFTER INSERT ON piece_moves WHEN new.act = 'explained' AND new.to_set_id IS NOT NULL
  BEGIN
    INSERT INTO slot_knots (set_id, item_id, since_at) VALUES (new.to_set_id, new.item_id, new.done_at)
      ON CONFLICT (set_id, item_id) DO UPDATE SET since_at = min(since_at, excluded.since_at);
  END;
-- Entered after others that were done later: whether there was enough in the slot at every moment since, counted back from now.
-- Before the row is there, so that what the slot holds is as it was.
CREATE TRIGGER pieces_leave_a_slot_in_the_past BEFORE INSERT ON piece_moves
  WHEN new.from_set_id IS NOT NULL AND new.act <> 'carried'
    AND EXISTS (SELECT 1 FROM piece_moves INDEXED BY piece_moves_into_slot
      WHERE to_set_id = new.from_set_id AND item_id = new.item_id AND done_at > new.done_at)
  BEGIN
    INSERT INTO slot_knots (set_id, item_id, since_at)
      SELECT new.from_set_id, new.item_id, new.done_at
        WHERE new.quantity > (SELECT min(lay) FROM (
          SELECT (SELECT coalesce(sum(held.quantity), 0) FROM slot_holdings held
              JOIN configuration_lines line ON line.id = held.line_id
              WHERE held.set_id = new.from_set_id AND line.item_id = new.item_id)
            - sum(pieces) OVER (ORDER BY done_at DESC, seq DESC) AS lay
          FROM (
            SELECT done_at, seq, quantity AS pieces FROM piece_moves INDEXED BY piece_moves_into_slot
              WHERE to_set_id = new.from_set_id AND item_id = new.item_id AND done_at > new.done_at AND act <> 'carried'
            UNION ALL
            SELECT done_at, seq, -quantity FROM piece_moves INDEXED BY piece_moves_out_of_slot
              WHERE from_set_id = new.from_set_id AND item_id = new.item_id AND done_at > new.done_at AND act <> 'carried')))
      ON CONFLICT (set_id, item_id) DO UPDATE SET since_at = min(since_at, excluded.since_at);
  END;
INSERT INTO slot_knots (set_id, item_id, since_at)
  SELECT set_id, item_id, min(done_at) FROM (
    SELECT from_set_id AS set_id, item_id, done_at FROM piece_moves
      WHERE from_set_id IS NOT NULL AND lot IS NOT NULL AND act <> 'carried'
    UNION ALL
    SELECT to_set_id, item_id, done_at FROM piece_moves WHERE act = 'explained' AND to_set_id IS NOT NULL
    UNION ALL
    SELECT set_id, item_id, done_at FROM (
      SELECT set_id, item_id, done_at, sum(pieces) OVER (PARTITION BY set_id, item_id ORDER BY done_at, seq) AS lay FROM (
        SELECT to_set_id AS set_id, item_id, done_at, seq, quantity AS pieces FROM piece_moves
          WHERE to_set_id IS NOT NULL AND act <> 'carried'
        UNION ALL
        SELECT from_set_id, item_id, done_at, seq, -quantity FROM piece_moves
          WHERE from_set_id IS NOT NULL AND act <> 'carried'))
      WHERE lay < 0)
  GROUP BY set_id, item_id;

-- The sets with pieces in a slot, by its line: whichever version they stand by.
CREATE INDEX slot_holdings_of_line ON slot_holdings (line_id, set_id, quantity) WHERE quantity > 0;

-- What a steriliser ran, in the order in which it ran it.
DROP INDEX loads_by_steriliser;
CREATE INDEX loads_by_steriliser ON loads (steriliser_id, started_at, number);

-- The list of recalls, page by page.
CREATE INDEX recalls_closed ON recalls (number) WHERE closed_at IS NOT NULL;

-- What the pages of planning and reports are found by, however long the record.

CREATE INDEX cases_by_date ON cases (case_date, starts_at);
-- All a person was told; `notices_unseen` has what is new of it.
CREATE INDEX notices_by_person ON notices (person_id, told_at, id);
-- How often a set went through the steriliser, and since when.
CREATE INDEX turn_steps_sterilised ON turn_steps (set_id, done_at) WHERE step = 'inSteriliser';

-- Sterile pieces of each item that left the shelf in a month, less those that came back to it: what is likely to be lost of a lot is
-- worked out from twelve of them. The view works the same out from the moves; it fills the table here, and tests hold one
-- against the other.
CREATE VIEW shelf_months_worked_out AS
  SELECT move.item_id, substr(move.done_on, 1, 7) AS month, sum(iif(move.act = 'cameBack', -move.quantity, move.quantity)) AS units
  FROM moves_that_stand move JOIN stock ON stock.id = coalesce(move.from_stock_id, move.to_stock_id)
  WHERE stock.form <> 'unsterile' AND (move.act = 'cameBack'
    OR (move.act IN ('issued', 'refilled', 'takenOut') AND move.from_stock_id IS NOT NULL))
  GROUP BY move.item_id, substr(move.done_on, 1, 7);

CREATE TABLE shelf_months (
  item_id TEXT NOT NULL REFERENCES items(id),
  month TEXT NOT NULL,
  units INTEGER NOT NULL,
  PRIMARY KEY (item_id, month)
) STRICT, WITHOUT ROWID;
INSERT INTO shelf_months (item_id, month, units) SELECT item_id, month, units FROM shelf_months_worked_out;
CREATE TRIGGER what_leaves_the_shelf_is_counted_by_month AFTER INSERT ON piece_moves
  WHEN (new.act = 'cameBack' OR (new.act IN ('issued', 'refilled', 'takenOut') AND new.from_stock_id IS NOT NULL))
    AND EXISTS (SELECT 1 FROM stock WHERE id = coalesce(new.from_stock_id, new.to_stock_id) AND form <> 'unsterile')
  BEGIN
    INSERT INTO shelf_months (item_id, month, units)
      VALUES (new.item_id, substr(new.done_on, 1, 7), iif(new.act = 'cameBack', -new.quantity, new.quantity))
      ON CONFLICT (item_id, month) DO UPDATE SET units = units + excluded.units;
  END;
CREATE TRIGGER what_did_not_leave_the_shelf_is_not_counted AFTER INSERT ON moves_taken_back
  WHEN EXISTS (SELECT 1 FROM piece_moves move JOIN stock ON stock.id = coalesce(move.from_stock_id, move.to_stock_id)
    WHERE move.seq = new.move_seq AND stock.form <> 'unsterile' AND (move.act = 'cameBack'
      OR (move.act IN ('issued', 'refilled', 'takenOut') AND move.from_stock_id IS NOT NULL)))
  BEGIN
    UPDATE shelf_months SET units = units - (SELECT iif(act = 'cameBack', -quantity, quantity) FROM piece_moves WHERE seq = new.move_seq)
    WHERE (item_id, month) = (SELECT item_id, substr(done_on, 1, 7) FROM piece_moves WHERE seq = new.move_seq);
  END;
CREATE TRIGGER the_form_of_a_heap_stays BEFORE UPDATE OF form, item_id ON stock
  WHEN new.form <> old.form OR new.item_id <> old.item_id
  BEGIN SELECT raise(ABORT, 'what lies on a heap is of one item and form'); END;

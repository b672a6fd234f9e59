-- What lies on the shelf is found by item without the heaps that are used up, and how often each set went through the steriliser is
-- kept as it goes.

CREATE INDEX stock_on_shelf ON stock (item_id) WHERE quantity > 0;

-- The view works the same out from the steps; it fills the table here, and tests hold one against the other. Steps are only
-- ever added: nothing has to be taken off.
CREATE VIEW set_cycles_worked_out AS
  SELECT set_id, count(*) AS cycles FROM turn_steps INDEXED BY turn_steps_sterilised WHERE step = 'inSteriliser' GROUP BY set_id;

CREATE TABLE set_cycles (
  set_id TEXT PRIMARY KEY REFERENCES sets(id),
  cycles INTEGER NOT NULL CHECK (cycles > 0)
) STRICT, WITHOUT ROWID;
INSERT INTO set_cycles (set_id, cycles) SELECT set_id, cycles FROM set_cycles_worked_out;
CREATE TRIGGER a_set_goes_through_the_steriliser AFTER INSERT ON turn_steps WHEN new.step = 'inSteriliser'
  BEGIN
    INSERT INTO set_cycles (set_id, cycles) VALUES (new.set_id, 1)
      ON CONFLICT (set_id) DO UPDATE SET cycles = cycles + 1;
  END;

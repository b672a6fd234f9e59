-- Figures that every list of sets asks for, kept as their rows are written. Beside each a view works the same out from the
-- rows themselves: it fills the table here, and tests hold one against the other.

-- How complete each set is. A line nobody has counted holds nothing for certain; `below` are must-have lines (class 1 and 2) that
-- are not simply there, and whether something stands in for them is looked at only for these.
CREATE VIEW set_completeness_worked_out AS
  SELECT sets.id AS set_id,
    count(line.id) AS lines,
    coalesce(sum(line.expected), 0) AS expected,
    coalesce(sum(min(held.found, line.expected)), 0) AS found,
    coalesce(sum(max(held.found - line.expected, 0)), 0) AS surplus,
    coalesce(sum(held.unsound), 0) AS unsound,
    count(line.id) - count(held.found) AS uncounted,
    coalesce(sum(line.must_have_class <= 2), 0) AS musts,
    coalesce(sum(line.must_have_class <= 2 AND coalesce(held.found < line.minimum, 1)), 0) AS below,
    coalesce(sum(held.found < line.expected AND line.must_have_class = 1), 0) AS short_1,
    coalesce(sum(held.found < line.expected AND line.must_have_class = 2), 0) AS short_2,
    coalesce(sum(held.found < line.expected AND line.must_have_class = 3), 0) AS short_3,
    coalesce(sum(held.found < line.expected AND line.must_have_class = 4), 0) AS short_4
  FROM sets LEFT JOIN configuration_lines line ON line.version_id = sets.version_id
    LEFT JOIN set_contents held ON held.set_id = sets.id AND held.line_id = line.id
  GROUP BY sets.id;

CREATE TABLE set_completeness (
  set_id TEXT PRIMARY KEY REFERENCES sets(id) ON DELETE CASCADE,
  lines INTEGER NOT NULL,
  expected INTEGER NOT NULL,
  found INTEGER NOT NULL,
  surplus INTEGER NOT NULL,
  unsound INTEGER NOT NULL,
  uncounted INTEGER NOT NULL,
  musts INTEGER NOT NULL,
  below INTEGER NOT NULL,
  -- lines short of what is expected, by must-have class
  short_1 INTEGER NOT NULL,
  short_2 INTEGER NOT NULL,
  short_3 INTEGER NOT NULL,
  short_4 INTEGER NOT NULL,
  -- another number with every change of what lies in the set, so that only what changed is read again; drawn by lot, so that what
  -- was taken back with its transaction, or lay there in a store replaced in place, is never taken for it
  mark INTEGER NOT NULL DEFAULT (abs(random() % 9007199254740991))
) STRICT, WITHOUT ROWID;

INSERT INTO set_completeness (set_id, lines, expected, found, surplus, unsound, uncounted, musts, below, short_1, short_2, short_3, short_4)
  SELECT * FROM set_completeness_worked_out;

CREATE TRIGGER a_set_has_its_completeness AFTER INSERT ON sets
  BEGIN
    INSERT INTO set_completeness (set_id, lines, expected, found, surplus, unsound, uncounted, musts, below, short_1, short_2, short_3, short_4)
      SELECT * FROM set_completeness_worked_out WHERE set_id = new.id;
  END;
CREATE TRIGGER another_version_is_judged_anew AFTER UPDATE OF version_id ON sets WHEN new.version_id <> old.version_id
  BEGIN
    UPDATE set_completeness SET (lines, expected, found, surplus, unsound, uncounted, musts, below, short_1, short_2, short_3, short_4) =
      (SELECT lines, expected, found, surplus, unsound, uncounted, musts, below, short_1, short_2, short_3, short_4
        FROM set_completeness_worked_out WHERE set_id = new.id), mark = abs(random() % 9007199254740991)
      WHERE set_id = new.id;
  END;
-- What lies on lines of another version than the set follows counts for nothing; it is judged with its version.
CREATE TRIGGER contents_come_into_completeness AFTER INSERT ON set_contents
  BEGIN
    UPDATE set_completeness SET found = set_completeness.found + min(new.found, line.expected),
      surplus = surplus + max(new.found - line.expected, 0), unsound = unsound + new.unsound, uncounted = uncounted - 1,
      below = below - (line.must_have_class <= 2 AND new.found >= line.minimum),
      short_1 = short_1 + (new.found < line.expected AND line.must_have_class = 1),
      short_2 = short_2 + (new.found < line.expected AND line.must_have_class = 2),
      short_3 = short_3 + (new.found < line.expected AND line.must_have_class = 3),
      short_4 = short_4 + (new.found < line.expected AND line.must_have_class = 4), mark = abs(random() % 9007199254740991)
      FROM configuration_lines line JOIN sets ON sets.version_id = line.version_id
      WHERE set_completeness.set_id = new.set_id AND line.id = new.line_id AND sets.id = new.set_id;
  END;
CREATE TRIGGER contents_go_out_of_completeness AFTER DELETE ON set_contents
  BEGIN
    UPDATE set_completeness SET found = set_completeness.found - min(old.found, line.expected),
      surplus = surplus - max(old.found - line.expected, 0), unsound = unsound - old.unsound, uncounted = uncounted + 1,
      below = below + (line.must_have_class <= 2 AND old.found >= line.minimum),
      short_1 = short_1 - (old.found < line.expected AND line.must_have_class = 1),
      short_2 = short_2 - (old.found < line.expected AND line.must_have_class = 2),
      short_3 = short_3 - (old.found < line.expected AND line.must_have_class = 3),
      short_4 = short_4 - (old.found < line.expected AND line.must_have_class = 4), mark = abs(random() % 9007199254740991)
      FROM configuration_lines line JOIN sets ON sets.version_id = line.version_id
      WHERE set_completeness.set_id = old.set_id AND line.id = old.line_id AND sets.id = old.set_id;
  END;
CREATE TRIGGER contents_change_completeness AFTER UPDATE ON set_contents
  BEGIN
    UPDATE set_completeness SET found = set_completeness.found + min(new.found, line.expected) - min(old.found, line.expected),
      surplus = surplus + max(new.found - line.expected, 0) - max(old.found - line.expected, 0),
      unsound = unsound + new.unsound - old.unsound,
      below = below + (line.must_have_class <= 2) * ((new.found < line.minimum) - (old.found < line.minimum)),
      short_1 = short_1 + (line.must_have_class = 1) * ((new.found < line.expected) - (old.found < line.expected)),
      short_2 = short_2 + (line.must_have_class = 2) * ((new.found < line.expected) - (old.found < line.expected)),
      short_3 = short_3 + (line.must_have_class = 3) * ((new.found < line.expected) - (old.found < line.expected)),
      short_4 = short_4 + (line.must_have_class = 4) * ((new.found < line.expected) - (old.found < line.expected)),
      mark = abs(random() % 9007199254740991)
      FROM configuration_lines line JOIN sets ON sets.version_id = line.version_id
      WHERE set_completeness.set_id = new.set_id AND line.id = new.line_id AND sets.id = new.set_id;
  END;
CREATE TRIGGER contents_stay_where_they_are BEFORE UPDATE OF set_id, line_id ON set_contents
  WHEN new.set_id <> old.set_id OR new.line_id <> old.line_id
  BEGIN SELECT raise(ABORT, 'what lies on a line is deleted there and entered where it lies'); END;

-- When stages of turns ended, the latest fifty of each kind of set and stage: what the usual times are learned from.
CREATE TABLE stage_after (stage TEXT PRIMARY KEY, step TEXT NOT NULL) STRICT, WITHOUT ROWID;
INSERT INTO stage_after (stage, step) VALUES ('comingBack', 'washing'), ('washing', 'onBench'), ('onBench', 'packed'),
  ('packed', 'inSteriliser'), ('inSteriliser', 'awaitingAcceptance'), ('awaitingAcceptance', 'inSterileStore');

CREATE VIEW stage_ends_worked_out AS
  SELECT configuration_id, stage, seq, began_at, ended_at FROM (
    SELECT version.configuration_id, passed.stage, passed.seq, passed.began_at, passed.ended_at,
      row_number() OVER (PARTITION BY version.configuration_id, passed.stage ORDER BY passed.seq DESC) AS nth
    FROM (SELECT seq, set_id, turn_id, step, done_at AS ended_at,
        lag(step) OVER before AS stage, lag(turn_id) OVER before AS turn_before, lag(done_at) OVER before AS began_at
      FROM turn_steps WINDOW before AS (PARTITION BY set_id ORDER BY seq)) passed
    JOIN stage_after ON stage_after.stage = passed.stage AND stage_after.step = passed.step
    JOIN sets ON sets.id = passed.set_id JOIN configuration_versions version ON version.id = sets.version_id
    WHERE passed.turn_before = passed.turn_id)
  WHERE nth <= 50;

CREATE TABLE stage_ends (
  configuration_id TEXT NOT NULL REFERENCES configurations(id),
  stage TEXT NOT NULL REFERENCES stage_after(stage),
  -- of the step that ended it
  seq INTEGER NOT NULL,
  began_at TEXT NOT NULL,
  ended_at TEXT NOT NULL,
  PRIMARY KEY (configuration_id, stage, seq)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX stage_ends_by_seq ON stage_ends (seq);
INSERT INTO stage_ends (configuration_id, stage, seq, began_at, ended_at)
  SELECT configuration_id, stage, seq, began_at, ended_at FROM stage_ends_worked_out;
CREATE TRIGGER a_stage_ends AFTER INSERT ON turn_steps
  WHEN EXISTS (SELECT 1 FROM stage_after WHERE stage_after.step = new.step)
  BEGIN
    INSERT INTO stage_ends (configuration_id, stage, seq, began_at, ended_at)
      SELECT version.configuration_id, before.step, new.seq, before.done_at, new.done_at
      FROM turn_steps before
        JOIN stage_after ON stage_after.stage = before.step AND stage_after.step = new.step
        JOIN sets ON sets.id = new.set_id JOIN configuration_versions version ON version.id = sets.version_id
      WHERE before.seq = (SELECT seq FROM turn_steps WHERE set_id = new.set_id AND seq < new.seq ORDER BY seq DESC LIMIT 1)
        AND before.turn_id = new.turn_id;
    DELETE FROM stage_ends WHERE (configuration_id, stage) IN
        (SELECT configuration_id, stage FROM stage_ends WHERE seq = new.seq)
      AND seq <= (SELECT older.seq FROM stage_ends newest JOIN stage_ends older
          ON older.configuration_id = newest.configuration_id AND older.stage = newest.stage
        WHERE newest.seq = new.seq ORDER BY older.seq DESC LIMIT 1 OFFSET 50);
  END;

-- Lists of what is there now are read without the years behind it: packs by the heap they lie in and by how they stand, cases by
-- when they end, loads by how they stand and when they were made up.
CREATE INDEX packs_by_stock ON packs (stock_id) WHERE stock_id IS NOT NULL;
CREATE INDEX packs_by_state ON packs (state);
CREATE INDEX cases_by_end ON cases (ends_at);
CREATE INDEX loads_by_state ON loads (state);
CREATE INDEX loads_by_time ON loads (made_up_at);

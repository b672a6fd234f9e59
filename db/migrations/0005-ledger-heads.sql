-- The ledger: its second form, whom and what each entry names, and the heads written outside the database.

-- How an entry's hash is made (lib/ledger/chain.ts); those of the first release are of form 1.
ALTER TABLE ledger ADD COLUMN form INTEGER NOT NULL DEFAULT 1 CHECK (form IN (1, 2));

-- Which entries name a person, set, case, load, pack or steriliser, as subject or in their detail. Worked out from the
-- ledger by the trigger alone, so that no writer can forget it; `ledger:verify` works it out again.
CREATE TABLE ledger_things (
  thing TEXT NOT NULL,
  seq INTEGER NOT NULL REFERENCES ledger(seq),
  PRIMARY KEY (thing, seq)
) STRICT, WITHOUT ROWID;
CREATE VIEW ledger_names (thing, seq) AS
  SELECT subject_id, seq FROM ledger
  UNION SELECT person_id, seq FROM ledger WHERE person_id IS NOT NULL
  UNION SELECT node.value, ledger.seq FROM ledger, json_tree(ledger.detail) AS node
    WHERE node.type = 'text' AND (node.value GLOB 'set_*' OR node.value GLOB 'case_*' OR node.value GLOB 'load_*'
      OR node.value GLOB 'pack_*' OR node.value GLOB 'person_*' OR node.value GLOB 'steriliser_*');
INSERT INTO ledger_things SELECT thing, seq FROM ledger_names;
CREATE TRIGGER ledger_things_of_an_entry AFTER INSERT ON ledger BEGIN
  INSERT OR IGNORE INTO ledger_things SELECT thing, seq FROM ledger_names WHERE seq = new.seq;
END;
CREATE TRIGGER ledger_things_are_never_changed BEFORE UPDATE ON ledger_things
  BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER ledger_things_are_never_deleted BEFORE DELETE ON ledger_things
  BEGIN SELECT raise(ABORT, 'the ledger is append-only'); END;

CREATE INDEX ledger_by_action ON ledger (action, seq);
CREATE INDEX ledger_by_entered ON ledger (entered_at);
CREATE INDEX ledger_corrections ON ledger (detail ->> '$.corrects', seq) WHERE detail ->> '$.corrects' IS NOT NULL;

-- Heads of the ledger that were written to a second place, and where. The place is the proof, not this list.
CREATE TABLE ledger_heads (
  id INTEGER PRIMARY KEY,
  written_at TEXT NOT NULL,
  seq INTEGER NOT NULL CHECK (seq > 0),
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  written_to TEXT NOT NULL
) STRICT;
CREATE TRIGGER ledger_heads_are_never_changed BEFORE UPDATE ON ledger_heads
  BEGIN SELECT raise(ABORT, 'heads that were written stay'); END;
CREATE TRIGGER ledger_heads_are_never_deleted BEFORE DELETE ON ledger_heads
  BEGIN SELECT raise(ABORT, 'heads that were written stay'); END;

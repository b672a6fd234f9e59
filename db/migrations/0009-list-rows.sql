-- Under which row of another program's theatre list a case is known: a digest of the row's id, so that the row is known
-- again when it comes with another time, and the id itself is kept nowhere.
CREATE TABLE list_rows (
  row_digest TEXT PRIMARY KEY CHECK (length(row_digest) = 64),
  case_id TEXT NOT NULL REFERENCES cases(id),
  known_since TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX list_rows_by_case ON list_rows (case_id);

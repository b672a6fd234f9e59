-- One row that is written to see whether anything can be written at all; it means nothing else.
CREATE TABLE write_probe (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  written_at TEXT NOT NULL
) STRICT;

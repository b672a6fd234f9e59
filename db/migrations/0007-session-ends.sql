-- Sessions that are long over are removed, but for those in which something was done: both are found by index, and so is
-- what the foreign keys ask as one is removed.
CREATE INDEX sessions_by_end ON sessions (ends_at);
CREATE INDEX scans_by_session ON scans (session_id);
CREATE INDEX bench_entries_by_session ON bench_entries (session_id);

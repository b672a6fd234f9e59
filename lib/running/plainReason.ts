/** Why the disk or the database would not, in plain words; what is not known keeps its own words. */
export function plainReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const said = error instanceof Error ? error.message : String(error);
  const text = `${code} ${said}`;
  if (/ENOSPC|EDQUOT|SQLITE_FULL|disk is full/i.test(text)) return 'the disk is full.';
  if (/EROFS|EACCES|EPERM|SQLITE_READONLY|readonly database|SQLITE_CANTOPEN/i.test(text))
    return 'the disk, or the file, may only be read.';
  if (/SQLITE_BUSY|SQLITE_LOCKED|database is locked/i.test(text))
    return 'another program holds the database.';
  if (/SQLITE_CORRUPT|SQLITE_NOTADB|malformed|not a database/i.test(text))
    return 'the database file is damaged.';
  if (/EIO|SQLITE_IOERR/i.test(text)) return 'the disk does not answer as it should.';
  return `${said}.`;
}

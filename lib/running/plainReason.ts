/** Why the store does not take a write, or cannot be read, as far as the disk or the engine says. */
export type StorageFault = 'full' | 'readOnly' | 'notWritten' | 'held' | 'damaged' | 'silent';

const BY_CODE: readonly (readonly [StorageFault, RegExp])[] = [
  ['full', /^(ENOSPC|EDQUOT|SQLITE_FULL)/],
  ['readOnly', /^(EROFS|SQLITE_READONLY|SQLITE_CANTOPEN)/],
  ['held', /^(SQLITE_BUSY|SQLITE_LOCKED)/],
  ['damaged', /^(SQLITE_CORRUPT|SQLITE_NOTADB)/],
  // a disk that a running system made read-only, or that fails: the engine tells no more than that its write was not taken
  ['notWritten', /^SQLITE_IOERR_(WRITE|FSYNC|DIR_FSYNC|TRUNCATE|DELETE|SHMSIZE)/],
  ['silent', /^(EIO|SQLITE_IOERR)/],
];
const SENTENCES: Record<StorageFault, string> = {
  full: 'the disk is full.',
  readOnly: 'the disk, or the file, may only be read.',
  notWritten: 'the disk takes no writes: it fails, or may only be read.',
  held: 'another program holds the database.',
  damaged: 'the database file is damaged.',
  silent: 'the disk does not answer as it should.',
};
/** What the same is called where only a text is left of an error. */
const BY_TEXT: readonly (readonly [StorageFault, RegExp])[] = [
  ['full', /ENOSPC|EDQUOT|SQLITE_FULL|disk is full/i],
  ['readOnly', /EROFS|EACCES|EPERM|SQLITE_READONLY|readonly database|SQLITE_CANTOPEN/i],
  ['held', /SQLITE_BUSY|SQLITE_LOCKED|database is locked/i],
  ['damaged', /SQLITE_CORRUPT|SQLITE_NOTADB|malformed|not a database/i],
  ['silent', /EIO|SQLITE_IOERR/i],
];

/** The fault of the store behind an error, by its code or that of one it was caused by; `null` where it is another error. */
export function storageFault(error: unknown): StorageFault | null {
  for (let one = error; one instanceof Error; one = one.cause) {
    const code = 'code' in one ? String(one.code) : '';
    const known = BY_CODE.find(([, codes]) => codes.test(code));
    if (known) return known[0];
  }
  return null;
}

/** Why the disk or the database would not, in plain words; what is not known keeps its own words. */
export function plainReason(error: unknown): string {
  const fault = storageFault(error);
  if (fault !== null) return SENTENCES[fault];
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const said = error instanceof Error ? error.message : String(error);
  const known = BY_TEXT.find(([, texts]) => texts.test(`${code} ${said}`));
  return known ? SENTENCES[known[0]] : `${said}.`;
}

/** What on record a write ran into that named things by its own ids. */
export type RecordClash = 'taken' | 'notThere';

const BY_CODE: readonly (readonly [RecordClash, RegExp])[] = [
  ['taken', /^SQLITE_CONSTRAINT_(UNIQUE|PRIMARYKEY|ROWID)$/],
  ['notThere', /^SQLITE_CONSTRAINT_FOREIGNKEY$/],
];

/**
 * Whether an error says that an id or name is another thing’s already, or that a thing which was named is not there, by its
 * code or that of one it was caused by; `null` where it is another error. What a rule of the store refuses is another: an act
 * should have known it.
 */
export function recordClash(error: unknown): RecordClash | null {
  for (let one = error; one instanceof Error; one = one.cause) {
    const code = 'code' in one ? String(one.code) : '';
    const known = BY_CODE.find(([, codes]) => codes.test(code));
    if (known) return known[0];
  }
  return null;
}

/** A database's schema, statement by statement in order of name, and a digest of the rows of each table. */
export interface Standing {
  /** Names of the migrations in it. */
  migrations: readonly string[];
  schema: readonly string[];
  rows: ReadonlyMap<string, string>;
  /** What engine and references say. */
  damage: readonly string[];
}

/** A migration that was killed: what was there, what a kill left, and what there is after the next start. */
export interface Killed {
  before: Standing;
  /** Of the file as the kill left it, once the engine has opened it. */
  left: Standing;
  after: Standing;
  /** A migration of the same database that nobody killed, and the schema of one that was always new. */
  unharmed: Standing;
  fresh: readonly string[];
  /** Tables whose rows depend on the moment at which the program starts: only that they are there is asked. */
  ofTheMoment: ReadonlySet<string>;
  /** Files that a kill left and no start cleared. */
  litter: readonly string[];
}

/** Where a kill left something between the old and the new, or the next start did not come where an unharmed one comes. */
export function migrationFaults({
  before,
  left,
  after,
  unharmed,
  fresh,
  ofTheMoment,
  litter,
}: Killed): string[] {
  const faults: string[] = [];
  for (const [what, { damage }] of [
    ['the kill left it damaged', left],
    ['it was damaged after the next start', after],
  ] as const)
    if (damage.length > 0) faults.push(`${what}: ${damage[0]}`);
  const isOld = left.migrations.length === before.migrations.length;
  const isNew = left.migrations.length === unharmed.migrations.length;
  if (!isOld && !isNew)
    faults.push(`the kill left ${left.migrations.length} of ${unharmed.migrations.length} migrations`);
  if (isOld) {
    if (!same(left.schema, before.schema)) faults.push('the kill left an old database with another schema');
    const changed = differing(left.rows, before.rows, new Set());
    if (changed.length > 0) faults.push(`the kill changed rows of an old database: ${changed.join(', ')}`);
  }
  if (!same(after.schema, fresh))
    faults.push('the schema after the next start is not that of a new database');
  const others = differing(after.rows, unharmed.rows, ofTheMoment);
  if (others.length > 0) faults.push(`rows are not as without the kill: ${others.join(', ')}`);
  if (litter.length > 0) faults.push(`left over: ${litter.join(', ')}`);
  return faults;
}

const same = (one: readonly string[], other: readonly string[]) =>
  one.length === other.length && one.every((line, at) => line === other[at]);

function differing(
  one: ReadonlyMap<string, string>,
  other: ReadonlyMap<string, string>,
  leaveOut: ReadonlySet<string>,
): string[] {
  return [...new Set([...one.keys(), ...other.keys()])].filter((table) =>
    leaveOut.has(table) ? one.has(table) !== other.has(table) : one.get(table) !== other.get(table),
  );
}

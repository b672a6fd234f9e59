import { and, eq, inArray, max, min } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { ledger, ledgerThings } from '../../schema';

const BEFORE_ALL = '1970-01-01T00:00:00.000Z';

/**
 * When each of these things was last changed: its latest entry in the ledger, for every write has one. What has no entry of
 * its own came with others, and is as old as the first entry that names it; what none names came with the hospital.
 *
 * @param subjectKind as the ledger calls the kind of thing
 */
export async function lastChanges(
  db: Reading,
  subjectKind: string,
  ids: readonly string[],
): Promise<(id: string) => string> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [own, naming, [first]] = await Promise.all([
    read
      .select({ id: ledger.subjectId, at: max(ledger.enteredAt) })
      .from(ledger)
      .where(and(eq(ledger.subjectKind, subjectKind), inArray(ledger.subjectId, [...ids])))
      .groupBy(ledger.subjectId),
    read
      .select({ id: ledgerThings.thing, at: min(ledger.enteredAt) })
      .from(ledgerThings)
      .innerJoin(ledger, eq(ledger.seq, ledgerThings.seq))
      .where(inArray(ledgerThings.thing, [...ids]))
      .groupBy(ledgerThings.thing),
    read.select({ at: min(ledger.enteredAt) }).from(ledger),
  ]);
  const [latest, earliest] = [own, naming].map((rows) => new Map(rows.map(({ id, at }) => [id, at])));
  return (id) => latest?.get(id) ?? earliest?.get(id) ?? first?.at ?? BEFORE_ALL;
}

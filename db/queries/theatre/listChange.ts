import { and, asc, desc, eq, inArray } from 'drizzle-orm';
import type { ListChange } from '@/lib/theatre/planning/listChanges';
import { mayRead, type Reading } from '../../reader';
import { cases, ledger, setPromises } from '../../schema';

/** The newest act of this kind by this person, by its number in the ledger; `null` where there is none. */
export async function newestActOf(db: Reading, personId: string, action: ListChange): Promise<number | null> {
  mayRead(db, 'readHospital');
  const [entry] = await db.read
    .select({ seq: ledger.seq })
    .from(ledger)
    .where(and(eq(ledger.personId, personId), eq(ledger.action, action)))
    .orderBy(desc(ledger.seq))
    .limit(1);
  return entry?.seq ?? null;
}

/** Whether any case has a set that planning gave it. */
export async function isPlanKept(db: Reading): Promise<boolean> {
  mayRead(db, 'readHospital');
  const [one] = await db.read
    .select({ id: setPromises.id })
    .from(setPromises)
    .where(eq(setPromises.chosenBy, 'planning'))
    .limit(1);
  return one !== undefined;
}

/** These cases by reference, the soonest first, each with whether anything is promised to it. */
export async function casesWithSets(
  db: Reading,
  ids: readonly string[],
): Promise<{ id: string; reference: string; hasSets: boolean }[]> {
  mayRead(db, 'readHospital');
  if (ids.length === 0) return [];
  const [rows, promised] = await Promise.all([
    db.read
      .select({ id: cases.id, reference: cases.reference })
      .from(cases)
      .where(inArray(cases.id, [...ids]))
      .orderBy(asc(cases.startsAt)),
    db.read
      .selectDistinct({ caseId: setPromises.caseId })
      .from(setPromises)
      .where(inArray(setPromises.caseId, [...ids])),
  ]);
  const has = new Set(promised.map(({ caseId }) => caseId));
  return rows.map((row) => ({ ...row, hasSets: has.has(row.id) }));
}

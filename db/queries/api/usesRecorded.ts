import { eq, inArray } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { cases, caseUses } from '../../schema';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** That there is a record of what was used in a case, and whether it is closed. What it says is told with the case. */
export interface UseRecorded {
  caseId: string;
  reference: string;
  caseDate: string;
  beganAt: string;
  closedAt: string | null;
}

/** Records of use, the last begun first. `undefined`: the place is not there any more. */
export async function usesRecorded(db: Reading, place: PlaceInList): Promise<UseRecorded[] | undefined> {
  mayRead(db, 'readHospital');
  const ids = await idsAfter(db.read, { table: caseUses, id: caseUses.caseId }, place);
  if (ids === undefined) return undefined;
  const rows = await db.read
    .select({ use: caseUses, reference: cases.reference, caseDate: cases.caseDate })
    .from(caseUses)
    .innerJoin(cases, eq(cases.id, caseUses.caseId))
    .where(inArray(caseUses.caseId, ids));
  const found = rows.map(({ use: { caseId, beganAt, closedAt }, reference, caseDate }) => ({
    id: caseId,
    ...{ caseId, reference, caseDate, beganAt, closedAt },
  }));
  return inOrderOf(ids, found).map(({ id: _, ...one }) => one);
}

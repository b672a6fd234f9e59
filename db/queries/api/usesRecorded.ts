import { asc, eq, gt } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { cases, caseUses } from '../../schema';
import type { PlaceInList } from './idsAfter';

/** That there is a record of what was used in a case, and whether it is closed. What it says is told with the case. */
export interface UseRecorded {
  caseId: string;
  reference: string;
  caseDate: string;
  beganAt: string;
  closedAt: string | null;
}

/** Records of use, in the order of the ids of their cases. */
export async function usesRecorded(
  { read, reader }: Reading,
  { after, limit }: PlaceInList,
): Promise<UseRecorded[]> {
  mayRead({ reader }, 'readHospital');
  const { caseId, beganAt, closedAt } = caseUses;
  return read
    .select({ caseId, reference: cases.reference, caseDate: cases.caseDate, beganAt, closedAt })
    .from(caseUses)
    .innerJoin(cases, eq(cases.id, caseUses.caseId))
    .where(after === null ? undefined : gt(caseUses.caseId, after))
    .orderBy(asc(caseUses.caseId))
    .limit(limit);
}

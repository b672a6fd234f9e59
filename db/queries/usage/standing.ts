import { count, eq } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { caseUses, useEntries } from '../../schema';

/** How far the record of use of a case is. */
export interface UseStanding {
  entries: number;
  /** What stayed open as it was closed; `null`: it is not closed. */
  open: number | null;
}

export async function standingOfUse(db: Reading, caseId: string): Promise<UseStanding> {
  mayRead(db, 'readHospital');
  const [[row], [counted]] = await Promise.all([
    db.read.select({ questions: caseUses.questions }).from(caseUses).where(eq(caseUses.caseId, caseId)),
    db.read.select({ entries: count() }).from(useEntries).where(eq(useEntries.caseId, caseId)),
  ]);
  return {
    entries: counted?.entries ?? 0,
    open: Array.isArray(row?.questions) ? row.questions.length : null,
  };
}

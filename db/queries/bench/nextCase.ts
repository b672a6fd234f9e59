import { and, asc, eq, gt, isNull } from 'drizzle-orm';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import type { Queries } from '../../client';
import { cases, setPromises } from '../../schema';

/** The next case a set is promised to, by which what is put into it must still be good; `null`: none. Inside or outside a write. */
export async function nextCaseOf(
  read: Queries,
  setId: string,
  now: string,
): Promise<{ reference: string; caseDate: PlainDate } | null> {
  const [row] = await read
    .select({ reference: cases.reference, caseDate: cases.caseDate })
    .from(setPromises)
    .innerJoin(cases, eq(cases.id, setPromises.caseId))
    .where(and(eq(setPromises.setId, setId), gt(cases.endsAt, now), isNull(cases.cancelledAt)))
    .orderBy(asc(cases.startsAt))
    .limit(1);
  return row ? { reference: row.reference, caseDate: plainDate.parse(row.caseDate) } : null;
}

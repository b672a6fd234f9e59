import { and, asc, eq, isNotNull } from 'drizzle-orm';
import type { Queries } from '../../client';
import { casePicks, caseReturns, sets } from '../../schema';

/** A set that went into theatre for the case. */
export interface TableSet {
  id: string;
  code: string;
  pickId: string;
  issuedAt: string;
  /** The sterile pack it went in; `null`: not on record. */
  packId: string | null;
  useBy: string | null;
  held: boolean;
  /** It came back unopened. */
  unopened: boolean;
}

/** Sets that were issued to a case or sent to it. */
export async function setsAtTable(read: Queries, caseId: string): Promise<TableSet[]> {
  const rows = await read
    .select({ pick: casePicks, set: sets, back: caseReturns.outcome })
    .from(casePicks)
    .innerJoin(sets, eq(sets.id, casePicks.setId))
    .leftJoin(caseReturns, eq(caseReturns.pickId, casePicks.id))
    .where(and(eq(casePicks.caseId, caseId), isNotNull(casePicks.issuedAt)))
    .orderBy(asc(sets.code), asc(casePicks.doneAt));
  // a set that went twice is there as it went last
  return [...new Map(rows.map((row) => [row.set.id, row])).values()].map(({ pick, set, back }) => ({
    id: set.id,
    code: set.code,
    pickId: pick.id,
    issuedAt: pick.issuedAt ?? '',
    packId: pick.packId ?? (set.caseId === caseId ? set.packId : null),
    useBy: pick.useBy,
    held: set.step === 'held' && set.caseId === caseId,
    unopened: back === 'returnedUnopened',
  }));
}

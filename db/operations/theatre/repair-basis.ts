import { inArray } from 'drizzle-orm';
import type { Queries } from '../../client';
import { cases, setPromises, sets } from '../../schema';

/** What a repair was worked out from, as far as it touches it. */
export interface RepairBasis {
  /** Every promise there was, by id. */
  promises: ReadonlySet<string>;
  /** Revisions of cases and of sets, by id; those named are looked at. */
  revisions: ReadonlyMap<string, number>;
}

/** Whether all of it stands as it did: no promise made or ended, and no named case or set changed since. */
export async function standsAsSeen(
  write: Queries,
  { promises, revisions }: RepairBasis,
  ids: { cases: readonly string[]; sets: readonly string[] },
): Promise<boolean> {
  const [all, caseRows, setRows] = await Promise.all([
    write.select({ id: setPromises.id }).from(setPromises),
    write
      .select({ id: cases.id, revision: cases.revision })
      .from(cases)
      .where(inArray(cases.id, [...ids.cases])),
    write
      .select({ id: sets.id, revision: sets.revision })
      .from(sets)
      .where(inArray(sets.id, [...ids.sets])),
  ]);
  if (all.length !== promises.size || all.some(({ id }) => !promises.has(id))) return false;
  const rows = [...caseRows, ...setRows];
  const named = new Set([...ids.cases, ...ids.sets]);
  return rows.length === named.size && rows.every(({ id, revision }) => revisions.get(id) === revision);
}

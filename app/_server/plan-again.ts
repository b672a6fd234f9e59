import 'server-only';
import type { Database } from '@/db/client';
import type { Person } from '@/db/queries/people';
import type { Outcome } from '@/lib/identity/refusal';
import type { ListChange } from '@/lib/theatre/planning/listChanges';
import { newId, now } from './clock';
import { type PlannedAnew, planAgainBy } from './list-planner';

/** Plans anew after the list was changed, in the same request, as `planAgainBy` says. */
export const planAgain = (db: Database, person: Person, after: ListChange): Promise<PlannedAnew | null> =>
  planAgainBy({ db, person, now, newId }, after);

/** A change of the list that succeeded, with what planning anew came to; a refused one as it is. */
export async function withPlan<T extends object, C>(
  db: Database,
  person: Person,
  after: ListChange | null,
  outcome: Outcome<T, C>,
): Promise<Outcome<T & { planned: PlannedAnew | null }, C>> {
  if (!outcome.ok) return outcome;
  const planned = after === null ? null : await planAgain(db, person, after);
  return { ok: true, value: { ...outcome.value, planned } };
}

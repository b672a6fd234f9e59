import 'server-only';
import type { Database } from '@/db/client';
import type { Person } from '@/db/queries/people';
import { casesWithSets, isPlanKept, newestActOf } from '@/db/queries/theatre/listChange';
import type { Outcome } from '@/lib/identity/refusal';
import type { ListChange } from '@/lib/theatre/planning/listChanges';
import { type PlanChange, planChange } from '@/lib/theatre/planning/planChange';
import { plannedAnewWords } from '@/lib/wording/ways-out';
import { planAndKeep } from './theatre-planning';

/** What planning anew came to, by case and in words; `change` is `null` where it did not work. */
export interface PlannedAnew {
  change: PlanChange | null;
  sentence: string;
}

/**
 * Plans anew and keeps it after the list was changed, in the same request, signed by the person who changed it. Only while
 * planning has sets given to cases: who promises by hand is not surprised by promises, and `null` is answered. What a person
 * chose is never moved. The change itself stands whatever comes of this.
 */
export async function planAgain(
  db: Database,
  person: Person,
  after: ListChange,
): Promise<PlannedAnew | null> {
  try {
    if (!(await isPlanKept(db))) return null;
    const follows = await newestActOf(db, person.id, after);
    if (follows === null) return null;
    const kept = await planAndKeep(db, person, follows);
    if (!kept.ok) return { change: null, sentence: plannedAnewWords(null) };
    const { given, taken } = kept.value;
    const ids = [...new Set([...given, ...taken].map(({ caseId }) => caseId))];
    const change = planChange(kept.value, await casesWithSets(db, ids));
    return { change, sentence: plannedAnewWords(change) };
  } catch {
    // the solver may fail, or the store be busy: what was asked for is done all the same
    return { change: null, sentence: plannedAnewWords(null) };
  }
}

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

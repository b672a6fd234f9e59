import type { CaseId, SetId } from '../../identity/ids';
import type { PlanningFacts } from './facts';

/** What keeping a plan would change for one case: sets by code. */
export interface ProposedChange {
  caseId: CaseId;
  reference: string;
  startsAt: string;
  theatreId: string;
  gets: string[];
  loses: string[];
}

/**
 * What keeping a plan would change, by time; cases whose promises stay are not in it. What a person promised is taken from
 * nobody, whatever the plan says.
 */
export function proposedChanges(
  { cases, sets, promises }: PlanningFacts,
  plan: ReadonlyMap<CaseId, readonly SetId[]>,
): ProposedChange[] {
  const codeOf = new Map(sets.map(({ id, code }) => [id, code]));
  const codes = (ids: readonly SetId[]) => ids.map((id) => codeOf.get(id) ?? id).sort();
  return cases
    .flatMap(({ id, reference, startsAt, theatreId }): ProposedChange[] => {
      const wanted = plan.get(id) ?? [];
      const has = promises.filter(({ caseId }) => caseId === id);
      const gets = codes(wanted.filter((set) => !has.some(({ setId }) => setId === set)));
      const loses = codes(
        has
          .filter(({ setId, chosenBy }) => chosenBy === 'planning' && !wanted.includes(setId))
          .map(({ setId }) => setId),
      );
      if (gets.length === 0 && loses.length === 0) return [];
      return [{ caseId: id, reference, startsAt, theatreId, gets, loses }];
    })
    .sort((a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt));
}

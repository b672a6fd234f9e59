import type { SetId } from '../../identity/ids';
import { groupBy } from '../../lists/groupBy';
import type { CaseToServe, FactOfPromise, PlanningFacts } from './facts';

const MINUTE_MS = 60_000;
const needMs = ({ startsAt, leadMinutes }: CaseToServe) => Date.parse(startsAt) - leadMinutes * MINUTE_MS;

/**
 * Whether a set is spoken for by a promise that a person made to another case and that can't be kept, since the set comes too late
 * for it. The promise stands until somebody ends it, and bars the set until its own end: what could be had of it otherwise
 * could not be promised. Promises that can be kept are the plan's own affair.
 *
 * @param repairsFor references of cases whose own promises end with the repair that is asked for
 */
export function spokenFor(
  facts: PlanningFacts,
  repairsFor: readonly string[],
): (set: SetId | string, one: CaseToServe) => boolean {
  const { promises, cases, sets, rule } = facts;
  const caseOf = new Map(cases.map((one) => [one.id, one]));
  const readyOf = new Map(sets.map(({ id, readyMinutes }) => [id, readyMinutes]));
  const nowMs = Date.parse(facts.now);
  const comesTooLate = ({ caseId, setId, chosenBy }: FactOfPromise): boolean => {
    const [one, ready] = [caseOf.get(caseId), readyOf.get(setId)];
    if (chosenBy !== 'person' || one === undefined || ready == null || ready.p90 === 0) return false;
    if (repairsFor.includes(one.reference)) return false;
    return nowMs + ready[rule.planBy] * MINUTE_MS > needMs(one);
  };
  const stuck = groupBy(promises.filter(comesTooLate), ({ setId }) => setId as string);
  return (set, one) =>
    (stuck.get(set) ?? []).some(
      ({ caseId, untilAt }) => caseId !== one.id && needMs(one) < Date.parse(untilAt),
    );
}

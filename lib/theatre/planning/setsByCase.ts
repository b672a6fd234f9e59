import type { SetTurnaroundOutput } from '../../calculations/setTurnaround/output';
import type { CaseId, SetId } from '../../identity/ids';
import type { PlanningFacts } from './facts';

/** The sets each planned case gets; a case that gets none is in it, too, with none. */
export function setsByCase(
  { cases, sets }: PlanningFacts,
  answer: SetTurnaroundOutput | null,
): Map<CaseId, SetId[]> {
  const idOf = new Map(sets.map(({ id, code }) => [code, id]));
  const given = new Map(answer?.assignments.map((one) => [one.case, one.sets]) ?? []);
  return new Map(
    cases.map(({ id, reference }) => [
      id,
      (given.get(reference) ?? []).flatMap(({ set }) => idOf.get(set) ?? []),
    ]),
  );
}

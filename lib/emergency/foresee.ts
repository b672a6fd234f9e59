import type { SetTurnaroundOutput } from '../calculations/setTurnaround/output';
import { setTurnaroundInput } from '../calculations/setTurnaround/schema';
import { setTurnaround } from '../calculations/setTurnaround/setTurnaround';
import type { Solver } from '../kits/solver';
import type { PlanningFacts } from '../theatre/planning/facts';
import { turnaroundInput } from '../theatre/planning/turnaroundInput';
import { factsWithTaking, type Hit, hitsOf, type Taking } from './replan';

/**
 * What taking these sets does to everybody else, by planning the whole list anew with the calculation `set-turnaround`; writes
 * nothing.
 *
 * @param before the list as planned without the emergency, from the same facts
 */
export async function foresee(
  facts: PlanningFacts,
  before: SetTurnaroundOutput | null,
  taking: Taking,
  solver: Solver,
): Promise<Hit[]> {
  const input = turnaroundInput(factsWithTaking(facts, taking));
  if (!input) return hitsOf(facts, taking, before, null);
  const said = await setTurnaround(setTurnaroundInput.parse({ ...input, repairsFor: [] }), { solver });
  return hitsOf(facts, taking, before, said.outcome === 'answered' ? said.answer : said.known);
}

import { closedBy } from './closure';
import type { Completed } from './packs';
import { atHandOf, type CoverProblem } from './problem';
import type { KitProgramme } from './programme';
import type { Reachable } from './search';

/**
 * A known kit as values of the programme's first variables. Only the sets and packs are given: the solver completes
 * a partial start to a whole one by fixing these and solving what remains, which is then easy.
 */
export function startValues(
  problem: CoverProblem,
  reach: Reachable,
  programme: KitProgramme,
  kit: Completed,
): (number | null)[] | null {
  const atHand = atHandOf(problem, kit);
  const whole = reach.chains.every((chain) =>
    closedBy(problem.chains[chain] as CoverProblem['chains'][number], atHand),
  );
  if (!whole) return null;
  const values = new Array<number | null>(programme.base.lower.length).fill(null);
  for (const variable of programme.sets) values[variable] = 0;
  for (const set of kit.sets) values[programme.sets[set] as number] = 1;
  kit.packs.forEach((quantity, pack) => {
    values[programme.packs[pack] as number] = quantity;
  });
  return values;
}

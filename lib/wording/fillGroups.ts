import type { HoleFill } from '../plans/plan';
import { compareNatural } from '../plans/planFinding';
import { listWords } from './numbers';
import { fillWords } from './plans';

/** What goes in the holes of a plate, holes that take the same together: `S1, S2 and S5: neutral, …`. */
export function fillGroups(
  fills: Readonly<Record<string, HoleFill>>,
  itemName: (id: string) => string,
): string[] {
  const groups = new Map<string, string[]>();
  for (const hole of Object.keys(fills).sort(compareNatural)) {
    const said = fillWords(fills[hole], itemName);
    groups.set(said, [...(groups.get(said) ?? []), hole]);
  }
  return [...groups].map(([said, holes]) => `${listWords(holes)}: ${said}`);
}

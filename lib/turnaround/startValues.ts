import type { Plan } from './plan';
import type { TurnaroundProgramme } from './programme';

/** A plan as values of the programme, for the solver to begin from; early uses are left for it to work out. */
export function startValues(programme: TurnaroundProgramme, plan: Plan): (number | null)[] {
  const values: (number | null)[] = programme.base.lower.map(() => 0);
  for (const { variable } of programme.early) values[variable] = null;
  for (const { case: one, way, part, group, variable } of programme.columns) {
    const service = plan[one];
    const set = service?.way === way ? service.sets[part] : undefined;
    if (set !== undefined && programme.groups[group]?.members.includes(set)) values[variable] = 1;
  }
  for (const [key, variable] of programme.wholeWays) {
    const [one, way] = key.split('/').map(Number);
    if (plan[one as number]?.way === way) values[variable] = 1;
  }
  return values;
}

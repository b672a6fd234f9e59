import type { Constraint } from '../kits/solver';
import type { Aims } from './plan';
import type { ProgrammeAim, TurnaroundProgramme } from './programme';

/** Aims that follow each other, in one objective in which each outweighs all after it. */
export interface Stage {
  /** Its first aim, and the one after its last. */
  from: number;
  to: number;
  weights: number[];
  /** One coefficient per variable of the programme. */
  objective: number[];
  /** What the aims come to whatever is chosen. */
  constant: number;
}

/** The largest objective that the solver is trusted to tell from one smaller by 1. */
const MOST_WEIGHT = 1_000_000;

/** As few stages as keep within what the solver can tell apart. */
export function stagesOf({ aims, base }: TurnaroundProgramme): Stage[] {
  const stages: Stage[] = [];
  let from = 0;
  while (from < aims.length) {
    let to = from + 1;
    let reach = (aims[from] as ProgrammeAim).most + 1;
    while (to < aims.length && reach * ((aims[to] as ProgrammeAim).most + 1) <= MOST_WEIGHT) {
      reach *= (aims[to] as ProgrammeAim).most + 1;
      to += 1;
    }
    stages.push(stageOf(aims.slice(from, to), from, base.lower.length));
    from = to;
  }
  return stages.filter(({ objective }) => objective.some((coefficient) => coefficient !== 0));
}

function stageOf(aims: readonly ProgrammeAim[], from: number, variables: number): Stage {
  const weights = new Array<number>(aims.length).fill(1);
  for (let at = aims.length - 2; at >= 0; at -= 1)
    weights[at] = (weights[at + 1] as number) * ((aims[at + 1] as ProgrammeAim).most + 1);
  const objective = new Array<number>(variables).fill(0);
  let constant = 0;
  aims.forEach((aim, at) => {
    const weight = weights[at] as number;
    constant += weight * aim.constant;
    for (const [variable, coefficient] of aim.terms)
      objective[variable] = (objective[variable] as number) + weight * coefficient;
  });
  return { from, to: from + aims.length, weights, objective, constant };
}

/**
 * The stage's aims no worse than this from now on: a row for each. One row for the whole stage says the same, but its weights
 * are of many sizes, and the solver takes several times as long with it.
 */
export function held({ from, to }: Stage, programme: TurnaroundProgramme, aims: Aims): Constraint[] {
  return programme.aims.slice(from, to).flatMap(({ terms, constant }, at) =>
    terms.length === 0
      ? []
      : [
          {
            variables: terms.map(([variable]) => variable),
            coefficients: terms.map(([, coefficient]) => coefficient),
            lower: null,
            upper: (aims[from + at] as number) - constant,
          },
        ],
  );
}

/** What a bound on the whole stage says of its first aim: all after it weighs less than 1 of it, and all is whole. */
export function leastOfFirst({ weights }: Stage, bound: number): number {
  return Math.floor(Math.ceil(bound - 1e-6) / (weights[0] as number));
}

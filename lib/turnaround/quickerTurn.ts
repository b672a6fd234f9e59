import type { Bookings } from './bookings';
import type { Service } from './plan';
import { backOf, needOf, readyOf, type TurnaroundProblem, waysOf } from './problem';

/** One turn made quicker: the set's present one, or the one after a case, which may be the case itself. */
export interface QuickerTurn {
  service: Service;
  set: number;
  /** `null`: the turn it is in, or about to be. */
  after: number | null;
  byMs: number;
}

/** Sets of which all but one are free, and the least by which one turn must be quicker to free that one too. */
export function quickestTurn(
  problem: TurnaroundProblem,
  one: number,
  bookings: Bookings,
): QuickerTurn | null {
  const needMs = needOf(problem, one);
  const free = (set: number) =>
    readyOf(problem, set) <= needMs &&
    bookings.inTheWay(set, bookings.stretchAt(one, set, needMs)).length === 0;
  let best: QuickerTurn | null = null;
  waysOf(problem, one).forEach(({ parts, pouches }, way) => {
    if (!bookings.hasPouches(pouches)) return;
    parts.forEach((part, at) => {
      for (const set of part) {
        const turn = turnToHasten(problem, one, set, bookings);
        if (!turn || (best && turn.byMs >= best.byMs)) continue;
        const sets = othersFree(parts, at, set, free);
        if (sets) best = { service: { way, sets }, set, ...turn };
      }
    });
  });
  return best;
}

/** Which one turn keeps the set from the case, and by how much; `null` where it is none, or more than one. */
function turnToHasten(
  problem: TurnaroundProblem,
  one: number,
  set: number,
  bookings: Bookings,
): { after: number | null; byMs: number } | null {
  const needMs = needOf(problem, one);
  const readyMs = readyOf(problem, set);
  const inTheWay = bookings.inTheWay(set, bookings.stretchAt(one, set, needMs));
  const [other, more] = inTheWay;
  if (more || !Number.isFinite(readyMs)) return null;
  if (readyMs > needMs) return other ? null : { after: null, byMs: readyMs - needMs };
  if (!other) return null;
  // the earlier of the two gives way by its turn, and no turn takes less than no time
  const [after, byMs] =
    other.fromMs <= needMs
      ? [other.case, other.toMs - needMs]
      : [one, backOf(problem, one, set) - other.fromMs];
  const turnMs = problem.sets[set]?.turnMs[problem.rule.planBy] ?? 0;
  return byMs < turnMs ? { after, byMs } : null;
}

function othersFree(
  parts: readonly (readonly number[])[],
  at: number,
  set: number,
  free: (set: number) => boolean,
): number[] | null {
  const sets: number[] = [];
  for (const [other, part] of parts.entries()) {
    const chosen = other === at ? set : part.find((one) => one !== set && !sets.includes(one) && free(one));
    if (chosen === undefined) return null;
    sets.push(chosen);
  }
  return sets;
}

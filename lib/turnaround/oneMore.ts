import type { Bookings } from './bookings';
import { backOf, needOf, type PlannedCase, readyOf, type TurnaroundProblem, waysOf } from './problem';

/** Sets from elsewhere that would serve a case, and for how long they are wanted. */
export interface OneMore {
  way: number;
  /** The parts of that way that have no set. */
  parts: number[];
  fromMs: number;
  toMs: number;
}

/** The way that lacks fewest sets, and for how long sets like those would be away; pouches must be there. */
export function oneMore(problem: TurnaroundProblem, one: number, bookings: Bookings): OneMore | null {
  const needMs = needOf(problem, one);
  const lacking = waysOf(problem, one).flatMap(({ parts, pouches }, way) => {
    if (!bookings.hasPouches(pouches)) return [];
    const free = new Set(
      parts
        .flat()
        .filter(
          (set) =>
            readyOf(problem, set) <= needMs &&
            bookings.inTheWay(set, bookings.stretchAt(one, set, needMs)).length === 0,
        ),
    );
    const missing = parts.flatMap((part, at) => {
      const own = part.find((set) => free.has(set));
      if (own === undefined) return [at];
      free.delete(own);
      return [];
    });
    const back = parts.flat().map((set) => backOf(problem, one, set));
    const toMs = Math.max((problem.cases[one] as PlannedCase).endMs, ...back);
    return [{ way, parts: missing, fromMs: needMs, toMs }];
  });
  return lacking.sort((a, b) => a.parts.length - b.parts.length || a.way - b.way)[0] ?? null;
}

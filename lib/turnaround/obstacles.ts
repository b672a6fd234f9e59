import type { Bookings } from './bookings';
import { needOf, readyOf, type TurnaroundProblem, waysOf } from './problem';

/** Why one set does not serve one case in a plan. */
export type Obstacle =
  /** Nobody can say when it will be ready. */
  | { kind: 'readyUnknown' }
  | { kind: 'notReady'; readyMs: number }
  /** Another case has it until after it is needed. */
  | { kind: 'inUse'; by: number; untilMs: number }
  /** It is free, but would not be back when another case needs it. */
  | { kind: 'neededNext'; by: number; fromMs: number }
  /** The way that takes it also takes a pouch of which none is left. */
  | { kind: 'noPouch'; pouch: number }
  /** It is free and would do; another part of the same way has none. */
  | { kind: 'onlyThis' };

/** What stands between the case and each set of one of its ways. */
export function obstaclesOf(
  problem: TurnaroundProblem,
  one: number,
  way: number,
  bookings: Bookings,
): { part: number; set: number; obstacle: Obstacle }[] {
  const { parts, pouches } = waysOf(problem, one)[way] ?? { parts: [], pouches: [] };
  const lacking = pouches.find((pouch) => !bookings.hasPouches([pouch]));
  return parts.flatMap((part, at) =>
    part.map((set) => ({ part: at, set, obstacle: obstacleOf(problem, one, set, lacking, bookings) })),
  );
}

function obstacleOf(
  problem: TurnaroundProblem,
  one: number,
  set: number,
  lacking: number | undefined,
  bookings: Bookings,
): Obstacle {
  const needMs = needOf(problem, one);
  const readyMs = readyOf(problem, set);
  if (!Number.isFinite(readyMs)) return { kind: 'readyUnknown' };
  if (readyMs > needMs) return { kind: 'notReady', readyMs };
  const inTheWay = [...bookings.inTheWay(set, bookings.stretchAt(one, set, needMs))].sort(
    (a, b) => a.fromMs - b.fromMs,
  );
  const [first] = inTheWay;
  if (first && first.fromMs <= needMs) return { kind: 'inUse', by: first.case, untilMs: first.toMs };
  if (first) return { kind: 'neededNext', by: first.case, fromMs: first.fromMs };
  return lacking === undefined ? { kind: 'onlyThis' } : { kind: 'noPouch', pouch: lacking };
}

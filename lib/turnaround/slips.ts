import { Bookings } from './bookings';
import { inOrder } from './components';
import type { Service } from './plan';
import { needOf, readyOf, type TurnaroundProblem, waysOf } from './problem';

/** A case begun later so that some sets can serve it. */
export interface Slip {
  service: Service;
  /** How much later: what every one of its sets is waited for. */
  slipMs: number;
}

/**
 * The least a case must slip for some sets to serve it while all else stays as booked; `null` where no slip helps: its
 * sets are ready nobody knows when, or there is no pouch left.
 */
export function leastSlip(problem: TurnaroundProblem, one: number, bookings: Bookings): Slip | null {
  const needMs = needOf(problem, one);
  let best: Slip | null = null;
  waysOf(problem, one).forEach(({ parts, pouches }, way) => {
    if (best?.slipMs === 0 || !bookings.hasPouches(pouches)) return;
    const atOnce = bookings.setsFor(one, way, needMs, (set) => bookings.freeSince(set, needMs));
    if (atOnce) {
      best = { service: { way, sets: atOnce }, slipMs: 0 };
      return;
    }
    // a set becomes free when it is ready, or when it is back from a case
    const freed = parts
      .flat()
      .flatMap((set) => [readyOf(problem, set), ...bookings.of(set).map(({ toMs }) => toMs)]);
    const instants = freed.filter((at) => at > needMs && Number.isFinite(at));
    for (const atMs of [...new Set(instants)].sort((a, b) => a - b)) {
      if (best && atMs - needMs >= best.slipMs) return;
      const sets = bookings.setsFor(one, way, atMs, (set) => bookings.freeSince(set, atMs));
      if (!sets) continue;
      best = { service: { way, sets }, slipMs: atMs - needMs };
      return;
    }
  });
  return best;
}

/**
 * What each case would slip if none were refused: in the order of need each waits for the first sets it can have, and keeps
 * them as long as it would have. `null` where none ever comes.
 */
export function slipsInOrder(problem: TurnaroundProblem): (Slip | null)[] {
  const bookings = new Bookings(problem);
  const slips: (Slip | null)[] = problem.cases.map(() => null);
  for (const one of inOrder(problem, problem.cases.keys())) {
    const slip = leastSlip(problem, one, bookings);
    if (!slip) continue;
    slips[one] = slip;
    bookings.book(one, slip.service, slip.slipMs);
  }
  return slips;
}

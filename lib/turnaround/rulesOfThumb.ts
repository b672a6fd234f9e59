import { Bookings } from './bookings';
import { inOrder } from './components';
import { canKeep, type Plan } from './plan';
import { needOf, type TurnaroundProblem, waysOf } from './problem';

/** What people do without a plan: in the order of need each case takes the set that has been free longest. */
export function earliestFree(problem: TurnaroundProblem, cases: readonly number[]): Plan {
  return assign(problem, inOrder(problem, cases), false);
}

/** The most urgent first, and each keeps what it was promised where it can. */
function urgentFirst(problem: TurnaroundProblem, cases: readonly number[]): Plan {
  const ordered = inOrder(problem, cases).sort((a, b) => rankOf(problem, a) - rankOf(problem, b));
  return assign(problem, ordered, true);
}

/** Promises first, then the rest by urgency: what was planned already stands unless it can't. */
function promisesFirst(problem: TurnaroundProblem, cases: readonly number[]): Plan {
  const promised = new Set(
    problem.promises.flatMap((promise) => (canKeep(problem, promise) ? [promise.case] : [])),
  );
  const rank = (one: number) => (promised.has(one) ? 0 : 1);
  const ordered = inOrder(problem, cases).sort(
    (a, b) => rank(a) - rank(b) || rankOf(problem, a) - rankOf(problem, b),
  );
  return assign(problem, ordered, true);
}

/** What the plans are made by that the search begins from; of hundreds of cases each takes a tenth of a second. */
export const FIRST_RULES = [earliestFree, urgentFirst, promisesFirst] as const;

function assign(problem: TurnaroundProblem, cases: readonly number[], keepPromises: boolean): Plan {
  const plan: Plan = problem.cases.map(() => null);
  const bookings = new Bookings(problem);
  const promisedTo = new Map<number, Set<number>>();
  if (keepPromises) {
    for (const promise of problem.promises)
      promisedTo.set(promise.case, (promisedTo.get(promise.case) ?? new Set()).add(promise.set));
  }
  for (const one of cases) {
    const needMs = needOf(problem, one);
    const promised = promisedTo.get(one);
    const liking = (set: number) =>
      promised?.has(set) ? Number.NEGATIVE_INFINITY : bookings.freeSince(set, needMs);
    const found = waysOf(problem, one)
      .map((way, at) => ({ at, way }))
      .filter(({ way }) => bookings.hasPouches(way.pouches))
      .flatMap(({ at, way }) => {
        const sets = bookings.setsFor(one, at, needMs, liking);
        return sets ? [{ way: at, sets, penalty: way.penalty, kept: keptBy(sets, promised) }] : [];
      })
      .sort((a, b) => b.kept - a.kept || a.penalty - b.penalty || a.way - b.way)[0];
    if (!found) continue;
    const service = { way: found.way, sets: found.sets };
    plan[one] = service;
    bookings.book(one, service);
  }
  return plan;
}

const keptBy = (sets: readonly number[], promised: Set<number> | undefined) =>
  promised ? sets.filter((set) => promised.has(set)).length : 0;
const rankOf = ({ cases }: TurnaroundProblem, one: number) => cases[one]?.rank ?? 0;

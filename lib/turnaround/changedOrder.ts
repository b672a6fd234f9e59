import type { PlannedCase, TurnaroundProblem } from './problem';

/** The list with the case and its neighbour before or after it in the same theatre having changed places. */
export function changedOrders(problem: TurnaroundProblem, one: number) {
  const { theatre } = problem.cases[one] as PlannedCase;
  if (theatre === null) return [];
  const sameTheatre = problem.cases
    .flatMap((other, at) => (other.theatre === theatre ? [{ at, ...other }] : []))
    .sort((a, b) => a.startMs - b.startMs || a.at - b.at);
  const place = sameTheatre.findIndex(({ at }) => at === one);
  return [
    [place - 1, place],
    [place, place + 1],
  ].flatMap(([earlier, later]) => {
    const [first, second] = [sameTheatre[earlier as number], sameTheatre[later as number]];
    if (!first || !second || second.startMs < first.endMs) return [];
    // what lies between them stays as long
    const secondStartMs = first.startMs;
    const firstStartMs = second.endMs - (first.endMs - first.startMs);
    const moved = new Map([
      [first.at, firstStartMs - first.startMs],
      [second.at, secondStartMs - second.startMs],
    ]);
    const swapped: TurnaroundProblem = {
      ...problem,
      cases: problem.cases.map((planned, at) => {
        const byMs = moved.get(at) ?? 0;
        return {
          ...planned,
          needMs: planned.needMs + byMs,
          startMs: planned.startMs + byMs,
          endMs: planned.endMs + byMs,
        };
      }),
    };
    const neighbour = first.at === one ? second.at : first.at;
    const times = {
      startMs: first.at === one ? firstStartMs : secondStartMs,
      otherStartMs: first.at === one ? secondStartMs : firstStartMs,
    };
    return [{ swapped, neighbour, times }];
  });
}

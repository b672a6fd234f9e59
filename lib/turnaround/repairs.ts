import { Bookings } from './bookings';
import { changedOrders } from './changedOrder';
import { type OneMore, oneMore } from './oneMore';
import { otherSets, type RepairOptions } from './otherSets';
import { aimsOf, compareAims, keeps, type Plan, type Service } from './plan';
import type { PlannedCase, TurnaroundProblem } from './problem';
import { type QuickerTurn, quickestTurn } from './quickerTurn';
import { leastSlip } from './slips';
import { solveTurnaround } from './solve';

/** What a repair takes from others, beside the plan as it stands. */
export interface RepairCost {
  /** Cases that were served and would not be. */
  unserved: number[];
  /** Promises that held and would not. */
  moved: { case: number; set: number; to: readonly number[] }[];
}

export type Repair = { cost: RepairCost } & (
  | /** Sets that serve the case, with all other cases placed as well as can be. */ {
      kind: 'otherSets';
      service: Service;
    }
  | ({ kind: 'quickerTurn' } & QuickerTurn)
  | /** Two neighbours of one theatre change places, and end when they would have. */ {
      kind: 'changeOrder';
      with: number;
      startMs: number;
      otherStartMs: number;
      service: Service;
    }
  | { kind: 'laterSlot'; startMs: number; slipMs: number; service: Service }
  | ({ kind: 'oneMore' } & OneMore)
);

/**
 * What could be done for a case, cheapest first: fewest others unserved by urgency, then least given up of what was
 * promised, then in the order of the kinds above. For a case that is served these are its other sets.
 */
export async function repairsFor(
  problem: TurnaroundProblem,
  plan: Plan,
  one: number,
  options: RepairOptions,
): Promise<Repair[]> {
  const bookings = new Bookings(problem, plan);
  const found: Repair[] = [];
  const everyCase = problem.cases.map((_, at) => at);
  const before = aimsOf(problem, plan, everyCase);
  const nothing = { unserved: [], moved: [] };

  for (const { service, plan: other } of await otherSets(problem, plan, one, options)) {
    found.push({ kind: 'otherSets', service, cost: costOf(problem, plan, other, [one]) });
  }
  if (!plan[one]) {
    const quicker = quickestTurn(problem, one, bookings);
    if (quicker) found.push({ kind: 'quickerTurn', ...quicker, cost: nothing });
    for (const { swapped, times, neighbour } of changedOrders(problem, one)) {
      const solved = await solveTurnaround(swapped, options);
      const service = solved.plan[one];
      const isGain = compareAims(solved.aims, before) < 0;
      if (!service || !isGain) continue;
      const cost = costOf(problem, plan, solved.plan, [one]);
      found.push({ kind: 'changeOrder', with: neighbour, ...times, service, cost });
    }
    const slip = leastSlip(problem, one, bookings);
    if (slip && slip.slipMs > 0) {
      const startMs = (problem.cases[one] as PlannedCase).startMs + slip.slipMs;
      found.push({ kind: 'laterSlot', startMs, ...slip, cost: nothing });
    }
    const more = oneMore(problem, one, bookings);
    if (more) found.push({ kind: 'oneMore', ...more, cost: nothing });
  }
  return found
    .map((repair, at) => ({ repair, at }))
    .sort(
      (a, b) =>
        compareCosts(problem, a.repair.cost, b.repair.cost) ||
        compareKinds(a.repair, b.repair) ||
        a.at - b.at,
    )
    .map(({ repair }) => repair);
}

function costOf(problem: TurnaroundProblem, from: Plan, to: Plan, but: readonly number[]): RepairCost {
  return {
    unserved: from.flatMap((service, one) => (service && !to[one] && !but.includes(one) ? [one] : [])),
    moved: problem.promises.flatMap((promise) =>
      keeps(from, promise) && !keeps(to, promise)
        ? [{ case: promise.case, set: promise.set, to: to[promise.case]?.sets ?? [] }]
        : [],
    ),
  };
}

function compareCosts(problem: TurnaroundProblem, a: RepairCost, b: RepairCost): number {
  const weigh = ({ unserved, moved }: RepairCost) => [
    ...[0, 1, 2, 3].map((rank) => unserved.filter((one) => problem.cases[one]?.rank === rank).length),
    moved.reduce(
      (sum, { case: one, set }) =>
        sum +
        (problem.promises.find((promise) => promise.case === one && promise.set === set)?.moveCost ?? 0),
      0,
    ),
  ];
  return compareAims(weigh(a), weigh(b));
}

const KINDS: readonly Repair['kind'][] = ['otherSets', 'quickerTurn', 'changeOrder', 'laterSlot', 'oneMore'];

function compareKinds(a: Repair, b: Repair): number {
  const byKind = KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind);
  if (byKind !== 0) return byKind;
  const amount = (repair: Repair) =>
    repair.kind === 'quickerTurn' ? repair.byMs : repair.kind === 'laterSlot' ? repair.slipMs : 0;
  return amount(a) - amount(b);
}

import { Bookings } from '@/lib/turnaround/bookings';
import { type Obstacle, obstaclesOf } from '@/lib/turnaround/obstacles';
import { canKeep, keeps, type Plan, usesBySet } from '@/lib/turnaround/plan';
import { backOf, needOf, type PlannedCase, readyOf, waysOf } from '@/lib/turnaround/problem';
import { leastSlip } from '@/lib/turnaround/slips';
import { minutesDown, minutesUp, names } from './names';
import type { SetTurnaroundOutput } from './output';
import type { Numbered } from './problemOf';

type Told<K extends keyof SetTurnaroundOutput> = SetTurnaroundOutput[K];

export function assignmentsOf(numbered: Numbered, plan: Plan): Told<'assignments'> {
  const { problem } = numbered;
  const { caseOf, setOf, serviceOf } = names(numbered);
  const uses = usesBySet(problem, plan);
  return plan.flatMap((service, one) => {
    if (!service) return [];
    const needMs = needOf(problem, one);
    const given = service.sets.map((set) => {
      const list = uses.get(set) ?? [];
      const before = list[list.indexOf(one) - 1];
      const readyMs = before === undefined ? readyOf(problem, set) : backOf(problem, before, set);
      const planned = problem.sets[set];
      const sureMs =
        before === undefined
          ? planned?.readyMs?.p90
          : (problem.cases[before] as PlannedCase).endMs + (planned?.turnMs.p90 ?? 0);
      return {
        set: setOf(set),
        afterCase: before === undefined ? null : caseOf(before),
        readyAtMs: readyMs,
        marginMinutes: minutesDown(needMs - readyMs),
        inTime: sureMs !== undefined && sureMs <= needMs ? ('nineInTen' as const) : ('halfTheTime' as const),
        backAtMs: backOf(problem, one, set),
      };
    });
    const { way, pouches } = serviceOf(one, service);
    return [{ case: caseOf(one), needByMs: needMs, way, sets: given, pouches }];
  });
}

export function unservedOf(numbered: Numbered, plan: Plan): Told<'unserved'> {
  const { problem } = numbered;
  const { caseOf, setOf } = names(numbered);
  const bookings = new Bookings(problem, plan);
  return plan.flatMap((service, one) => {
    if (service) return [];
    const slip = leastSlip(problem, one, bookings);
    const { needMs, startMs } = problem.cases[one] as PlannedCase;
    return [
      {
        case: caseOf(one),
        needByMs: needMs,
        ways: waysOf(problem, one).map((_, way) => ({
          way,
          obstacles: obstaclesOf(problem, one, way, bookings).map(({ set, obstacle }) => ({
            set: setOf(set),
            kind: obstacle.kind,
            ...obstacleNamed(numbered, one, set, obstacle),
          })),
        })),
        slipMinutes: slip && minutesUp(slip.slipMs),
        startAtMs: slip && startMs + slip.slipMs,
      },
    ];
  });
}

function obstacleNamed(numbered: Numbered, one: number, set: number, obstacle: Obstacle) {
  const { problem } = numbered;
  const { caseOf, pouchOf } = names(numbered);
  const needMs = needOf(problem, one);
  const none = { byCase: null, atMs: null, pouch: null, missesMinutes: null };
  switch (obstacle.kind) {
    case 'readyUnknown':
    case 'onlyThis':
      return none;
    case 'notReady':
      return { ...none, atMs: obstacle.readyMs, missesMinutes: minutesUp(obstacle.readyMs - needMs) };
    case 'inUse': {
      const { by, untilMs } = obstacle;
      return { ...none, byCase: caseOf(by), atMs: untilMs, missesMinutes: minutesUp(untilMs - needMs) };
    }
    case 'neededNext': {
      const { by, fromMs } = obstacle;
      const missesMinutes = minutesUp(backOf(problem, one, set) - fromMs);
      return { ...none, byCase: caseOf(by), atMs: fromMs, missesMinutes };
    }
    case 'noPouch':
      return { ...none, pouch: pouchOf(obstacle.pouch) };
  }
}

export function clashesOf(numbered: Numbered): Told<'clashes'> {
  const { problem } = numbered;
  const { caseOf, setOf } = names(numbered);
  const promised = new Map<number, number[]>();
  for (const { case: one, set } of problem.promises) promised.set(set, [...(promised.get(set) ?? []), one]);
  return [...promised]
    .sort(([a], [b]) => a - b)
    .flatMap(([set, list]) => {
      const ordered = [...list].sort((a, b) => needOf(problem, a) - needOf(problem, b) || a - b);
      return ordered.flatMap((first, at) =>
        ordered.slice(at + 1).flatMap((second) => {
          const fromMs = needOf(problem, second);
          const toMs = Math.min(backOf(problem, first, set), backOf(problem, second, set));
          return fromMs < toMs
            ? [
                {
                  set: setOf(set),
                  cases: [caseOf(first), caseOf(second)] as [string, string],
                  fromMs,
                  toMs,
                },
              ]
            : [];
        }),
      );
    });
}

export function movedPromisesOf(numbered: Numbered, plan: Plan): Told<'movedPromises'> {
  const { problem } = numbered;
  const { caseOf, setOf, setsOf } = names(numbered);
  return problem.promises
    .filter((promise) => !keeps(plan, promise))
    .map((promise) => ({
      case: caseOf(promise.case),
      from: setOf(promise.set),
      to: setsOf(plan[promise.case]?.sets ?? []),
      because: canKeep(problem, promise)
        ? 'betterPlan'
        : readyOf(problem, promise.set) > needOf(problem, promise.case)
          ? 'notReady'
          : 'notSuitable',
    }));
}

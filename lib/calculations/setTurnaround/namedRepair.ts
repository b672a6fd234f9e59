import { backOf, readyOf, waysOf } from '@/lib/turnaround/problem';
import type { Repair, RepairCost } from '@/lib/turnaround/repairs';
import { minutesUp, names } from './names';
import type { SetTurnaroundOutput } from './output';
import type { Numbered } from './problemOf';
import type { SetTurnaroundInput } from './schema';

/** A repair by its names; one more set may be borrowed or come on loan. */
export function namedRepair(
  numbered: Numbered,
  one: number,
  repair: Repair,
  elsewhere: SetTurnaroundInput['elsewhere'],
): SetTurnaroundOutput['repairs'][number]['repairs'] {
  const { problem } = numbered;
  const { caseOf, setOf, serviceOf } = names(numbered);
  const cost = namedCost(numbered, repair.cost);
  switch (repair.kind) {
    case 'otherSets':
      return [{ kind: 'otherSets', ...serviceOf(one, repair.service), cost }];
    case 'quickerTurn': {
      const { set, after, byMs } = repair;
      const { readyMs, turnMs } = problem.sets[set] ?? { readyMs: null, turnMs: { p50: 0, p90: 0 } };
      const gainMs =
        problem.rule.planBy === 'p50'
          ? 0
          : after === null
            ? readyOf(problem, set) - (readyMs?.p50 ?? 0)
            : turnMs.p90 - turnMs.p50;
      const backMs = after === null ? readyOf(problem, set) : backOf(problem, after, set);
      return [
        {
          kind: 'quickerTurn',
          ...serviceOf(one, repair.service),
          set: setOf(set),
          afterCase: after === null ? null : caseOf(after),
          byMinutes: minutesUp(byMs),
          readyByMs: backMs - byMs,
          halfTheTime: byMs <= gainMs,
          cost,
        },
      ];
    }
    case 'changeOrder':
      return [
        {
          kind: 'changeOrder',
          ...serviceOf(one, repair.service),
          withCase: caseOf(repair.with),
          startAtMs: repair.startMs,
          otherStartAtMs: repair.otherStartMs,
          cost,
        },
      ];
    case 'laterSlot':
      return [
        {
          kind: 'laterSlot',
          ...serviceOf(one, repair.service),
          startAtMs: repair.startMs,
          slipMinutes: minutesUp(repair.slipMs),
          cost,
        },
      ];
    case 'oneMore': {
      const parts = waysOf(problem, one)[repair.way]?.parts ?? [];
      const missing = repair.parts.map((part) =>
        [...new Set((parts[part] ?? []).map((set) => numbered.configurationOf[set] as string))].join(' or '),
      );
      const whenReady = { borrow: elsewhere.borrowedReadyAtMs, loan: elsewhere.loanReadyAtMs };
      return (['borrow', 'loan'] as const).map((kind) => {
        const readyMs = whenReady[kind];
        const inTime = readyMs === null ? 'notEstablished' : readyMs <= repair.fromMs ? 'yes' : 'no';
        const times = { neededByMs: repair.fromMs, untilMs: repair.toMs };
        return { kind, way: repair.way, missing, ...times, inTime, cost };
      });
    }
  }
}

function namedCost(numbered: Numbered, { unserved, moved }: RepairCost) {
  const { caseOf, setOf, setsOf } = names(numbered);
  return {
    unserved: unserved.map(caseOf),
    moved: moved.map(({ case: one, set, to }) => ({ case: caseOf(one), from: setOf(set), to: setsOf(to) })),
  };
}

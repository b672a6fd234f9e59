import { AIM, aimsOf, type Plan, RANKS } from '@/lib/turnaround/plan';
import { type Repair, repairsFor } from '@/lib/turnaround/repairs';
import { earliestFree } from '@/lib/turnaround/rulesOfThumb';
import { slipsInOrder } from '@/lib/turnaround/slips';
import { type SolvedTurnaround, solveTurnaround, type TurnaroundProgress } from '@/lib/turnaround/solve';
import { setTurnaroundWords } from '@/lib/wording/set-turnaround';
import type { Answer, MissingValue, Ports } from '../calculation';
import { copiesOf } from './copies';
import { namedRepair } from './namedRepair';
import { minutesUp } from './names';
import type { SetTurnaroundOutput } from './output';
import { type Numbered, problemOf } from './problemOf';
import type { SetTurnaroundInput } from './schema';
import { assignmentsOf, clashesOf, movedPromisesOf, unservedOf } from './told';

/** Cases that repairs are looked for unasked. */
const MOST_REPAIRED = 5;

/**
 * Which set goes to which case over the whole horizon: proven best, or with the gap; why a case goes without, how far it
 * would have to slip, and what could be done (calculations.md §6).
 */
export async function setTurnaround(
  input: SetTurnaroundInput,
  { solver, onProgress, signal, pause }: Ports,
): Promise<Answer<SetTurnaroundOutput>> {
  const numbered = problemOf(input);
  const { problem } = numbered;
  const options = {
    solver,
    timeLimitMs: input.timeLimitMs,
    signal,
    pause,
    onProgress: ({ casesDone, cases }: TurnaroundProgress) => onProgress?.({ done: casesDone, of: cases }),
  };
  const solved = await solveTurnaround(problem, options);
  const asked = casesToRepair(input, numbered, solved);
  const repairs: { case: number; repairs: Repair[] }[] = [];
  for (const one of asked) {
    signal?.throwIfAborted();
    const timeLimitMs = input.timeLimitMs / asked.length;
    repairs.push({
      case: one,
      repairs: await repairsFor(problem, solved.plan, one, { solver, timeLimitMs }),
    });
  }
  await pause?.();
  const everyCase = problem.cases.map((_, one) => one);
  const thumb = earliestFree(problem, everyCase);
  await pause?.();
  const slips = slipsInOrder(problem);
  await pause?.();
  const answer = answerOf(input, numbered, solved, { repairs, thumb, slips });
  const working = setTurnaroundWords.working(answer, input);
  const missing = missingReadiness(input, answer);
  return missing.length > 0
    ? { outcome: 'notEstablished', missing, known: answer, working }
    : { outcome: 'answered', answer, working };
}

function answerOf(
  input: SetTurnaroundInput,
  numbered: Numbered,
  solved: SolvedTurnaround,
  {
    repairs,
    thumb: thumbPlan,
    slips,
  }: {
    repairs: readonly { case: number; repairs: Repair[] }[];
    thumb: Plan;
    slips: ReturnType<typeof slipsInOrder>;
  },
): SetTurnaroundOutput {
  const { problem, cases, sets } = numbered;
  const { plan, aims, proof } = solved;
  const everyCase = problem.cases.map((_, one) => one);
  const aim = (number: number) => aims[number] as number;
  const unservedBy = (bounds: readonly number[]) =>
    bounds.slice(AIM.unserved, AIM.unserved + RANKS).reduce((sum, count) => sum + count, 0);
  const served = cases.length - unservedBy(aims);
  const thumb = cases.length - unservedBy(aimsOf(problem, thumbPlan, everyCase));
  return {
    copies: copiesOf(input, numbered),
    served,
    of: cases.length,
    assignments: assignmentsOf(numbered, plan),
    unserved: unservedOf(numbered, plan),
    clashes: clashesOf(numbered),
    movedPromises: movedPromisesOf(numbered, plan),
    slipsInOrder: everyCase.map((one) => {
      const slip = slips[one];
      return {
        case: cases[one] as string,
        slipMinutes: slip ? minutesUp(slip.slipMs) : null,
        sets: slip ? slip.service.sets.map((set) => sets[set] as string) : [],
      };
    }),
    repairs: repairs.map(({ case: one, repairs: of }) => ({
      case: cases[one] as string,
      repairs: of.flatMap((repair) => namedRepair(numbered, one, repair, input.elsewhere)),
    })),
    aims: {
      fixedNotKept: aim(AIM.fixedBroken),
      unservedNow: aim(AIM.unserved),
      unservedToday: aim(AIM.unserved + 1),
      unservedSoon: aim(AIM.unserved + 2),
      unservedBooked: aim(AIM.unserved + 3),
      movedCost: aim(AIM.movedCost),
      riskMinutes: aim(AIM.riskMinutes),
      penalty: aim(AIM.penalty),
    },
    earliestFree: { served: thumb, more: served - thumb },
    proof:
      proof.kind === 'optimal'
        ? { kind: 'optimal' }
        : { kind: 'gap', servedAtMost: cases.length - unservedBy(proof.atLeast) },
  };
}

function casesToRepair(input: SetTurnaroundInput, { problem, cases }: Numbered, { plan }: SolvedTurnaround) {
  if (input.repairsFor) return [...new Set(input.repairsFor)].map((name) => cases.indexOf(name));
  return plan
    .flatMap((service, one) => (service ? [] : [one]))
    .sort((a, b) => (problem.cases[a]?.rank ?? 0) - (problem.cases[b]?.rank ?? 0) || a - b)
    .slice(0, MOST_REPAIRED);
}

/** Sets nobody knows the time of, where a case goes without that they could serve, or a promise of theirs is given up. */
function missingReadiness(input: SetTurnaroundInput, answer: SetTurnaroundOutput): MissingValue[] {
  const wanted = new Set([
    ...answer.unserved.flatMap(({ ways }) =>
      ways.flatMap(({ obstacles }) =>
        obstacles.flatMap(({ kind, set }) => (kind === 'readyUnknown' ? [set] : [])),
      ),
    ),
    ...answer.movedPromises.map(({ from }) => from),
  ]);
  return input.sets.flatMap(({ set, ready }, at) =>
    ready === null && wanted.has(set)
      ? [{ path: ['sets', at, 'ready'], what: setTurnaroundWords.readyMissing(set) }]
      : [],
  );
}

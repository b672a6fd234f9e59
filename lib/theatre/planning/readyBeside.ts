import type { SetTurnaroundOutput } from '../../calculations/setTurnaround/output';
import type { CaseToServe, PlanningFacts } from './facts';

type Cost = SetTurnaroundOutput['repairs'][number]['repairs'][number]['cost'];

interface Taken {
  sets: readonly string[];
  cost: Cost;
  moves: readonly { reference: string; startsAt: string }[];
}

const MINUTE_MS = 60_000;

/**
 * When a case has all of its sets in a repair, beside the plan as it stands for everybody who keeps theirs: each set when it
 * is ready, or back from the case before. Where that would be after it is needed, the repair has others placed anew, too:
 * then all that is certain is that it is in time, so the time it is needed is told.
 */
export function readyBeside(
  { now, sets, rule, cases }: PlanningFacts,
  answer: SetTurnaroundOutput | null,
  one: CaseToServe,
  { sets: taken, cost, moves }: Taken,
): 'there' | { at: string } | null {
  const startsAt = moves.find(({ reference }) => reference === one.reference)?.startsAt ?? one.startsAt;
  const needMs = Date.parse(startsAt) - one.leadMinutes * MINUTE_MS;
  const gone = new Set([
    one.reference,
    ...cost.unserved,
    ...cost.moved.map((moved) => moved.case),
    ...moves.map(({ reference }) => reference),
  ]);
  const known = new Set(cases.map(({ reference }) => reference));
  const uses = (answer?.assignments ?? [])
    .filter((other) => known.has(other.case) && !gone.has(other.case) && other.needByMs < needMs)
    .flatMap((other) => other.sets);
  const nowMs = Date.parse(now);
  let lastMs = nowMs;
  let stored = true;
  for (const code of taken) {
    const set = sets.find((one) => one.code === code);
    const minutes = set?.readyMinutes?.[rule.planBy];
    if (minutes === undefined) return null;
    // its usual time may be over while nobody has moved it on
    stored &&= set?.inStore === true;
    const back = uses.filter(({ set }) => set === code).map(({ backAtMs }) => backAtMs);
    lastMs = Math.max(lastMs, nowMs + minutes * MINUTE_MS, ...back);
  }
  if (stored && lastMs <= nowMs) return 'there';
  return { at: new Date(Math.min(lastMs, needMs)).toISOString() };
}

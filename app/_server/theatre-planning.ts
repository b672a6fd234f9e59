import 'server-only';
import type { Database } from '@/db/client';
import { keepPlan, type PlanKept } from '@/db/operations/theatre/keep-plan';
import type { Person } from '@/db/queries/people';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import type { CaseId, SetId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import { problemOf } from '@/lib/theatre/planning/problemOf';
import { type SolvedTurnaround, solveTurnaround } from '@/lib/turnaround/solve';
import { newId, now } from './clock';
import { roundTimes } from './round-times';
import { highsSolver } from './solver/highs';

/** A list planned once, before any of it is kept. */
export interface PlannedList {
  facts: PlanningFacts;
  solved: SolvedTurnaround;
}

/** As long as a person at the list waits without a word. */
const TIME_LIMIT_MS = 5_000;
/** Promises that change while a list is planned are few; whoever lists is told after so many. */
const MOST_TRIES = 3;

/** Works out who gets which set over the horizon; writes nothing. */
export async function planList(db: Database): Promise<PlannedList> {
  const facts = await planningFacts(db, now());
  const solved = await solveTurnaround(problemOf(facts), { solver: highsSolver, timeLimitMs: TIME_LIMIT_MS });
  return { facts, solved };
}

/** Plans and keeps the plan; where promises changed meanwhile, it is planned anew. */
export async function planAndKeep(db: Database, person: Person): Promise<Outcome<PlanKept, never>> {
  for (let tries = 1; ; tries += 1) {
    const { facts, solved } = await planList(db);
    const round = await roundTimes(db);
    const kept = await keepPlan({
      db,
      now: now(),
      newId,
      person,
      plan: setsByCase(facts, solved),
      madeFrom: new Set(facts.promises.map(({ id }) => id)),
      round,
    });
    if (kept.ok || kept.refusal.because !== 'conflict' || tries === MOST_TRIES) return kept;
  }
}

function setsByCase({ cases, sets }: PlanningFacts, { plan }: SolvedTurnaround): Map<CaseId, SetId[]> {
  return new Map(
    cases.map(({ id }, at) => [id, (plan[at]?.sets ?? []).flatMap((set) => sets[set]?.id ?? [])]),
  );
}

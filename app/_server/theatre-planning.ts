import 'server-only';
import type { Database } from '@/db/client';
import type { PlanKept } from '@/db/operations/theatre/keep-plan';
import { hiddenFrom } from '@/db/queries/bench/blind';
import { newestChange } from '@/db/queries/ledgerHead';
import type { Person } from '@/db/queries/people';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import type { SetTurnaroundOutput } from '@/lib/calculations/setTurnaround/output';
import type { Outcome } from '@/lib/identity/refusal';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import { newId, now } from './clock';
import { type PlannedList, planAndKeepBy, planListAt, solveList, type Watched } from './list-planner';

const kept = globalThis as typeof globalThis & {
  kitwrightPlannedList?: { under: string; list: Promise<PlannedList> };
  kitwrightSolvedList?: { input: string; answer: Promise<SetTurnaroundOutput | null> };
};

/**
 * The list as planned in this minute: its facts are gathered once a minute, and anew after anything that can change them; who
 * gets which set is worked out where they are others than before.
 */
export async function plannedList(db: Database): Promise<PlannedList> {
  const change = await newestChange(db);
  const minute = now().slice(0, 'yyyy-mm-ddThh:mm'.length);
  const under = `${change} ${minute}`;
  if (kept.kitwrightPlannedList?.under !== under || change === null) {
    const list = listOfMinute(db, `${minute}:00.000Z`);
    kept.kitwrightPlannedList = { under, list };
    // what failed is not kept
    list.catch(() => {
      kept.kitwrightPlannedList = undefined;
    });
  }
  return (kept.kitwrightPlannedList as { list: Promise<PlannedList> }).list;
}

/** Facts as of the minute's beginning: asked again within it, they differ only in what was written. */
async function listOfMinute(db: Database, at: string): Promise<PlannedList> {
  const facts = await planningFacts(db, at);
  const stated = turnaroundInput(facts);
  const input = stated && { ...stated, repairsFor: [] };
  return { facts, input, answer: input && (await solvedOnce(input)) };
}

/** The answer to the last question, where this one is the same to the last letter and that one was proven. */
function solvedOnce(asked: NonNullable<PlannedList['input']>): Promise<SetTurnaroundOutput | null> {
  const input = JSON.stringify(asked);
  if (kept.kitwrightSolvedList?.input === input) return kept.kitwrightSolvedList.answer;
  const answer = solveList(asked);
  const solved = { input, answer };
  kept.kitwrightSolvedList = solved;
  const letGo = () => {
    if (kept.kitwrightSolvedList === solved) kept.kitwrightSolvedList = undefined;
  };
  answer.then((found) => found !== null && found.proof.kind !== 'optimal' && letGo(), letGo);
  return answer;
}

/**
 * Works out who gets which set over the horizon, by the calculation `set-turnaround`; writes nothing.
 *
 * @param repairsFor references of cases whose repairs are wanted; they take longer than the plan itself, and a case that
 *   nothing could be given to has none
 */
export const planList = (
  db: Database,
  repairsFor: readonly string[] = [],
  watched: Watched = {},
): Promise<PlannedList> => planListAt(db, now(), repairsFor, watched);

/**
 * The facts as the reader may be told them: to whoever is to check a set blind, which pieces no set holds would say what lies
 * in that set, too.
 */
export async function factsToTell(db: Database, facts: PlanningFacts): Promise<PlanningFacts> {
  if ((await hiddenFrom(db)).size === 0) return facts;
  const cases = facts.cases.map((one) => ({
    ...one,
    ways: one.ways && { ...one.ways, missing: [], outOfReach: [] },
  }));
  return { ...facts, cases };
}

/** Plans and keeps the plan, as `planAndKeepBy` says. */
export const planAndKeep = (
  db: Database,
  person: Person,
  follows?: number,
): Promise<Outcome<PlanKept, never>> => planAndKeepBy({ db, person, now, newId }, follows);

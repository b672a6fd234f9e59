import 'server-only';
import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import type { Database } from '@/db/client';
import { keepPlan, type PlanKept } from '@/db/operations/theatre/keep-plan';
import { hiddenFrom } from '@/db/queries/bench/blind';
import { newestChange } from '@/db/queries/ledgerHead';
import type { Person } from '@/db/queries/people';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import type { SetTurnaroundOutput } from '@/lib/calculations/setTurnaround/output';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import type { Outcome } from '@/lib/identity/refusal';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import { setsByCase } from '@/lib/theatre/planning/setsByCase';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import { newId, now } from './clock';
import { highsSolver } from './solver/highs';

/** A list planned once, before any of it is kept. `null` where there is no case to give sets to. */
export interface PlannedList {
  facts: PlanningFacts;
  input: NonNullable<ReturnType<typeof turnaroundInput>> | null;
  answer: SetTurnaroundOutput | null;
}

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
  const answer = solve(asked);
  const solved = { input, answer };
  kept.kitwrightSolvedList = solved;
  const letGo = () => {
    if (kept.kitwrightSolvedList === solved) kept.kitwrightSolvedList = undefined;
  };
  answer.then((found) => found !== null && found.proof.kind !== 'optimal' && letGo(), letGo);
  return answer;
}

/** Promises that change while a list is planned are few; whoever lists is told after so many. */
const MOST_TRIES = 3;

/** How far planning is, for whoever waits, and the way to end it. */
interface Watched {
  onProgress?: (progress: { done: number; of: number; label: string }) => void;
  signal?: AbortSignal;
}

/**
 * Works out who gets which set over the horizon, by the calculation `set-turnaround`; writes nothing.
 *
 * @param repairsFor references of cases whose repairs are wanted; they take longer than the plan itself, and a case that
 *   nothing could be given to has none
 */
export async function planList(
  db: Database,
  repairsFor: readonly string[] = [],
  { onProgress, signal }: Watched = {},
): Promise<PlannedList> {
  const facts = await planningFacts(db, now(), {
    signal,
    onProgress: (progress) => onProgress?.({ ...progress, label: 'what could serve each case' }),
  });
  const input = turnaroundInput(facts, repairsFor);
  if (!input) return { facts, input, answer: null };
  const placed = new Set(input.cases.map((one) => one.case));
  const asked = { ...input, repairsFor: repairsFor.filter((reference) => placed.has(reference)) };
  return { facts, input: asked, answer: await solve(asked, { onProgress, signal }) };
}

async function solve(
  asked: NonNullable<PlannedList['input']>,
  { onProgress, signal }: Watched = {},
): Promise<SetTurnaroundOutput | null> {
  const answer = await setTurnaround(setTurnaroundInput.parse(asked), {
    solver: highsSolver,
    ...(signal ? { signal } : {}),
    pause: () => turnOfTheLoop(),
    onProgress: (progress) => onProgress?.({ ...progress, label: 'who gets which set' }),
  });
  return answer.outcome === 'answered' ? answer.answer : answer.known;
}

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

/**
 * Plans and keeps the plan; where promises changed meanwhile, it is planned anew.
 *
 * @param follows the number in the ledger of the person's act that it follows from, where they did not ask for it
 */
export async function planAndKeep(
  db: Database,
  person: Person,
  follows?: number,
): Promise<Outcome<PlanKept, never>> {
  for (let tries = 1; ; tries += 1) {
    const { facts, answer } = await planList(db);
    const kept = await keepPlan({
      db,
      now: now(),
      newId,
      person,
      plan: setsByCase(facts, answer),
      madeFrom: new Set(facts.promises.map(({ id }) => id)),
      round: await roundTimes(db),
      ...(follows === undefined ? {} : { follows }),
    });
    if (kept.ok || kept.refusal.because !== 'conflict' || tries === MOST_TRIES) return kept;
  }
}

import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import type { Database } from '@/db/client';
import { keepPlan, type PlanKept } from '@/db/operations/theatre/keep-plan';
import type { Person } from '@/db/queries/people';
import { casesWithSets, isPlanKept, newestActOf } from '@/db/queries/theatre/listChange';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import type { SetTurnaroundOutput } from '@/lib/calculations/setTurnaround/output';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import type { NewId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import type { ListChange } from '@/lib/theatre/planning/listChanges';
import { type PlanChange, planChange } from '@/lib/theatre/planning/planChange';
import { setsByCase } from '@/lib/theatre/planning/setsByCase';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import { plannedAnewWords } from '@/lib/wording/ways-out';
import { highsSolver } from './solver/highs';

/** A list planned once, before any of it is kept. `null` where there is no case to give sets to. */
export interface PlannedList {
  facts: PlanningFacts;
  input: NonNullable<ReturnType<typeof turnaroundInput>> | null;
  answer: SetTurnaroundOutput | null;
}

/** What planning anew came to, by case and in words; `change` is `null` where it did not work. */
export interface PlannedAnew {
  change: PlanChange | null;
  sentence: string;
}

/** Whose hand planning is, and where its moments and ids come from: the server’s, or a command’s. */
export interface Planner {
  db: Database;
  person: Person;
  now: () => string;
  newId: NewId;
}

/** How far planning is, for whoever waits, and the way to end it. */
export interface Watched {
  onProgress?: (progress: { done: number; of: number; label: string }) => void;
  signal?: AbortSignal;
}

/** As `planList` of the server, at a moment. */
export async function planListAt(
  db: Database,
  at: string,
  repairsFor: readonly string[] = [],
  { onProgress, signal }: Watched = {},
): Promise<PlannedList> {
  const facts = await planningFacts(db, at, {
    signal,
    onProgress: (progress) => onProgress?.({ ...progress, label: 'what could serve each case' }),
  });
  const input = turnaroundInput(facts, repairsFor);
  if (!input) return { facts, input, answer: null };
  const placed = new Set(input.cases.map((one) => one.case));
  const asked = { ...input, repairsFor: repairsFor.filter((reference) => placed.has(reference)) };
  return { facts, input: asked, answer: await solveList(asked, { onProgress, signal }) };
}

/** Who gets which set; `null` where nothing is known of it. */
export async function solveList(
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

/** Promises that change while a list is planned are few; whoever lists is told after so many. */
const MOST_TRIES = 3;

/**
 * Plans and keeps the plan; where promises changed meanwhile, it is planned anew.
 *
 * @param follows the number in the ledger of the person's act that it follows from, where they did not ask for it
 */
export async function planAndKeepBy(
  { db, person, now, newId }: Planner,
  follows?: number,
): Promise<Outcome<PlanKept, never>> {
  for (let tries = 1; ; tries += 1) {
    const { facts, answer } = await planListAt(db, now());
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

/**
 * Plans anew and keeps it after the list was changed, signed by the person who changed it. Only while planning has sets given
 * to cases: who promises by hand is not surprised by promises, and `null` is answered. What a person chose is never moved. The
 * change itself stands whatever comes of this.
 */
export async function planAgainBy(planner: Planner, after: ListChange): Promise<PlannedAnew | null> {
  const { db, person } = planner;
  try {
    if (!(await isPlanKept(db))) return null;
    const follows = await newestActOf(db, person.id, after);
    if (follows === null) return null;
    const kept = await planAndKeepBy(planner, follows);
    if (!kept.ok) return { change: null, sentence: plannedAnewWords(null) };
    const { given, taken } = kept.value;
    const ids = [...new Set([...given, ...taken].map(({ caseId }) => caseId))];
    const change = planChange(kept.value, await casesWithSets(db, ids));
    return { change, sentence: plannedAnewWords(change) };
  } catch {
    // the solver may fail, or the store be busy: what was asked for is done all the same
    return { change: null, sentence: plannedAnewWords(null) };
  }
}

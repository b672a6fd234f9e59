import type { TurnaroundProblem } from '@/lib/turnaround/problem';
import { turnTime } from '@/lib/turnaround/turnTime';
import type { SetTurnaroundInput } from './schema';

const MINUTE_MS = 60_000;

/** The most urgent first. */
export const URGENCIES = ['now', 'today', 'soon', 'booked'] as const;

/** The input as numbers, cases and sets by their place in the order of need and of names: the order given changes nothing. */
export interface Numbered {
  problem: TurnaroundProblem;
  /** Names by number. */
  cases: string[];
  sets: string[];
  pouches: string[];
  /** Per set, by number, its configuration. */
  configurationOf: string[];
}

export function problemOf(input: SetTurnaroundInput): Numbered {
  const needMs = ({ startAtMs, leadMinutes }: SetTurnaroundInput['cases'][number]) =>
    startAtMs - leadMinutes * MINUTE_MS;
  const cases = [...input.cases].sort((a, b) => needMs(a) - needMs(b) || compare(a.case, b.case));
  const sets = [...input.sets].sort((a, b) => compare(a.set, b.set));
  const caseNumber = numbers(cases.map((one) => one.case));
  const setNumber = numbers(sets.map(({ set }) => set));
  const pouchNumber = numbers(input.pouches.map(({ pouch }) => pouch));
  const turns = new Map(
    input.configurations.map(({ configuration, stages }) => [
      configuration,
      turnTime(
        stages.map(({ p50Minutes, p90Minutes }) => ({ p50: p50Minutes, p90: p90Minutes })),
        input.stagesVary,
      ),
    ]),
  );
  const setsOf = new Map<string, number[]>();
  sets.forEach(({ configuration }, number) => {
    const list = setsOf.get(configuration);
    if (list) list.push(number);
    else setsOf.set(configuration, [number]);
  });
  const known = <T>(value: T | undefined): T => {
    if (value === undefined) throw new Error('names are checked before');
    return value;
  };
  const problem: TurnaroundProblem = {
    cases: cases.map((one) => ({
      needMs: needMs(one),
      startMs: one.startAtMs,
      endMs: one.endAtMs,
      rank: URGENCIES.indexOf(one.urgency),
      theatre: one.theatre,
      ways: one.ways.map(({ parts, pouches, penalty }) => ({
        parts: parts.map((part) =>
          [
            ...new Set([
              ...part.sets.map((set) => known(setNumber.get(set))),
              ...part.configurations.flatMap((configuration) => setsOf.get(configuration) ?? []),
            ]),
          ].sort((a, b) => a - b),
        ),
        pouches: pouches.map((pouch) => known(pouchNumber.get(pouch))),
        penalty,
      })),
    })),
    sets: sets.map(({ configuration, ready }) => {
      const turn = known(turns.get(configuration));
      return {
        readyMs: ready && { p50: ready.p50AtMs, p90: ready.p90AtMs },
        turnMs: { p50: turn.p50 * MINUTE_MS, p90: turn.p90 * MINUTE_MS },
      };
    }),
    pouches: input.pouches.map(({ quantity }) => quantity),
    promises: input.promises.map((promise) => ({
      case: known(caseNumber.get(promise.case)),
      set: known(setNumber.get(promise.set)),
      moveCost: promise.moveCost,
      fixed: promise.fixed,
    })),
    rule: { planBy: input.planBy, wantedMarginMs: input.wantedMarginMinutes * MINUTE_MS },
  };
  return {
    problem,
    cases: cases.map((one) => one.case),
    sets: sets.map(({ set }) => set),
    pouches: input.pouches.map(({ pouch }) => pouch),
    configurationOf: sets.map(({ configuration }) => configuration),
  };
}

/** By code unit, the same wherever it runs. */
const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
const numbers = (names: readonly string[]) => new Map(names.map((name, number) => [name, number] as const));

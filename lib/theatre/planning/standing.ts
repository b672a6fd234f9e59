import type { SetTurnaroundOutput } from '../../calculations/setTurnaround/output';
import type { MissingPieces } from '../../kits/missingPieces';
import type { CaseToServe, PlanningFacts } from './facts';

type Assignment = SetTurnaroundOutput['assignments'][number];
type Unserved = SetTurnaroundOutput['unserved'][number];

/** A set a case gets, and when that can be had. */
export interface GivenSet {
  code: string;
  /** In the sterile store now. */
  there: boolean;
  readyAt: string;
  /** The case it comes back from; `null` where it has served none yet. */
  afterCase: string | null;
  /** Ready in time half of the time only, or with less than the wanted margin. */
  tight: boolean;
}

/** How a case stands: five answers, and that its plan is still a draft. */
export type CaseStanding =
  | { kind: 'notPlanned' }
  /** What the plan needs is in no set and no pouch of the hospital. */
  | {
      kind: 'shortOf';
      missing: MissingPieces[];
      /** Sets that hold some of it and can't come round. */
      outOfReach: string[];
    }
  | { kind: 'ready' | 'readyWith'; sets: GivenSet[]; pouches: string[] }
  | { kind: 'waiting'; until: string; sets: GivenSet[]; pouches: string[] }
  /** Sets that could serve it are elsewhere then. */
  | { kind: 'noSetFree'; slipMinutes: number | null; obstacles: Unserved['ways'][number]['obstacles'] };

/**
 * How each case stands by the plan. A set that is on its way back keeps a case waiting until all of its sets are there; what
 * comes from a pouch is said beside ready.
 */
export function standings(
  { cases, sets, rule, now }: PlanningFacts,
  answer: SetTurnaroundOutput | null,
): Map<string, CaseStanding> {
  const given = new Map(answer?.assignments.map((one) => [one.case, one]) ?? []);
  const without = new Map(answer?.unserved.map((one) => [one.case, one]) ?? []);
  const inStore = new Set(sets.filter((set) => set.inStore).map(({ code }) => code));
  return new Map(
    cases.map((one) => [
      one.id,
      standingOf(one, given.get(one.reference), without.get(one.reference), {
        nowMs: Date.parse(now),
        inStore,
        marginMinutes: rule.marginMinutes,
      }),
    ]),
  );
}

interface At {
  nowMs: number;
  /** Codes of the sets in the sterile store: one whose usual time is over and that nobody moved on is not there. */
  inStore: ReadonlySet<string>;
  marginMinutes: number;
}

function standingOf(
  { ways }: CaseToServe,
  given: Assignment | undefined,
  without: Unserved | undefined,
  at: At,
): CaseStanding {
  if (ways === null) return { kind: 'notPlanned' };
  if (ways.outcome === 'short')
    return { kind: 'shortOf', missing: ways.missing, outOfReach: ways.outOfReach };
  if (given) return givenStanding(given, at);
  if (without) {
    const { slipMinutes } = without;
    return { kind: 'noSetFree', slipMinutes, obstacles: without.ways.flatMap(({ obstacles }) => obstacles) };
  }
  return { kind: 'ready', sets: [], pouches: [] };
}

function givenStanding({ sets, pouches }: Assignment, { nowMs, inStore, marginMinutes }: At): CaseStanding {
  const all = sets.map(
    ({ set, readyAtMs, afterCase, marginMinutes: margin, inTime }): GivenSet => ({
      code: set,
      there: afterCase === null && readyAtMs <= nowMs && inStore.has(set),
      readyAt: new Date(readyAtMs).toISOString(),
      afterCase,
      tight: inTime === 'halfTheTime' || (readyAtMs > nowMs && margin < marginMinutes),
    }),
  );
  const late = all.filter(({ there }) => !there).map(({ readyAt }) => readyAt);
  if (late.length > 0) {
    const until = [...late].sort().at(-1) as string;
    return { kind: 'waiting', until, sets: all, pouches };
  }
  return { kind: pouches.length > 0 ? 'readyWith' : 'ready', sets: all, pouches };
}

import type { SetId } from '../../identity/ids';
import type { WayToServe } from '../../kits/waysToServe';
import type { PlannedCase, TurnaroundProblem, Way } from '../../turnaround/problem';
import type { TimeSpread } from '../../turnaround/turnTime';
import type { Urgency } from '../surgicalCase';
import type { CaseToServe, PlanningFacts } from './facts';

const MINUTE_MS = 60_000;
/** Who is served first where not all can be. */
const RANK: Record<Urgency, number> = { now: 0, today: 1, soon: 2, booked: 3 };
/** What makes one way less welcome than another: what it leaves out, then trays, then packs. */
const NOT_AS_WISHED = 1_000;
const TRAY = 10;

/**
 * The facts as the bare problem. A set that a person promised to a case stays with it whether or not the plan asks for it, and
 * whether or not there is a plan yet.
 */
export function problemOf(facts: PlanningFacts): TurnaroundProblem {
  const nowMs = Date.parse(facts.now);
  const setAt = new Map(facts.sets.map(({ id }, at) => [id, at]));
  const caseAt = new Map(facts.cases.map(({ id }, at) => [id, at]));
  const pouchAt = new Map<string, number>(facts.pouches.map(({ stockId }, at) => [stockId, at]));
  const spread = (minutes: TimeSpread, fromMs: number): TimeSpread => ({
    p50: fromMs + minutes.p50 * MINUTE_MS,
    p90: fromMs + minutes.p90 * MINUTE_MS,
  });
  return {
    cases: facts.cases.map((one) => plannedCase(one, facts, setAt, pouchAt)),
    sets: facts.sets.map(({ readyMinutes, turnMinutes }) => ({
      readyMs: readyMinutes && spread(readyMinutes, nowMs),
      turnMs: spread(turnMinutes, 0),
    })),
    pouches: facts.pouches.map(({ quantity }) => quantity),
    promises: facts.promises.flatMap(({ caseId, setId, chosenBy }) => {
      const [one, set] = [caseAt.get(caseId), setAt.get(setId)];
      if (one === undefined || set === undefined) return [];
      return [{ case: one, set, moveCost: 1, fixed: chosenBy === 'person' }];
    }),
    rule: { planBy: facts.rule.planBy, wantedMarginMs: facts.rule.marginMinutes * MINUTE_MS },
  };
}

function plannedCase(
  one: CaseToServe,
  { promises }: PlanningFacts,
  setAt: ReadonlyMap<SetId, number>,
  pouchAt: ReadonlyMap<string, number>,
): PlannedCase {
  const startMs = Date.parse(one.startsAt);
  const chosen = promises
    .filter(({ caseId, chosenBy }) => caseId === one.id && chosenBy === 'person')
    .flatMap(({ setId }) => setAt.get(setId) ?? []);
  const stated = (one.ways?.ways ?? []).map((way) => wayOf(way, setAt, pouchAt));
  // nothing is planned yet, or what is planned can't be met: what a person chose for it stays all the same
  const ways = stated.length > 0 ? stated : chosen.length > 0 ? [NOTHING_STATED] : [];
  return {
    needMs: startMs - one.leadMinutes * MINUTE_MS,
    startMs,
    endMs: Date.parse(one.endsAt),
    rank: RANK[one.urgency],
    theatre: one.theatreId,
    ways: ways.map((way) => withChosen(way, chosen)),
  };
}

const NOTHING_STATED: Way = { parts: [], pouches: [], penalty: 0 };

function wayOf(
  { parts, packs, asWished }: WayToServe,
  setAt: ReadonlyMap<SetId, number>,
  pouchAt: ReadonlyMap<string, number>,
): Way {
  const pouches = packs.flatMap(({ stockId, quantity }) => {
    const at = pouchAt.get(stockId);
    return at === undefined ? [] : Array.from({ length: quantity }, () => at);
  });
  return {
    parts: parts.map((part) => part.flatMap((set) => setAt.get(set) ?? [])),
    pouches,
    penalty: (asWished ? 0 : NOT_AS_WISHED) + TRAY * parts.length + pouches.length,
  };
}

/** The way with a part for each chosen set that none of its parts could take. */
function withChosen(way: Way, chosen: readonly number[]): Way {
  const more = chosen.filter((set) => !way.parts.some((part) => part.includes(set)));
  return more.length === 0 ? way : { ...way, parts: [...way.parts, ...more.map((set) => [set])] };
}

import type { SetTurnaroundOutput } from '../../calculations/setTurnaround/output';
import type { Urgency } from '../surgicalCase';
import type { CaseToServe, PlanningFacts } from './facts';
import { type CaseStanding, standings } from './standing';

/** Whether a case can go as it stands: it cannot, or something is not sure yet, or all is well. */
export type RiskLevel = 'stops' | 'notSure' | 'fine';

/** When the sets of a case can be had, against when they are needed. */
export type RiskTime =
  /** In the sterile store, or nothing is needed. */
  | { kind: 'there' }
  | { kind: 'coming'; readyAt: string; marginMinutes: number; tight: boolean }
  /** Every set is elsewhere then; so much later there would be some. */
  | { kind: 'misses'; slipMinutes: number }
  /** Nobody can say. */
  | { kind: 'unknown' };

export interface RiskLine {
  case: CaseToServe;
  standing: CaseStanding;
  level: RiskLevel;
  /** When its sets must stand in theatre. */
  needBy: string;
  time: RiskTime;
  /** Sets that the plan gives it and that are not promised to it yet. */
  notPromised: string[];
  /** Promised sets that it can no longer count on, by the plan, and why. */
  givenUp: {
    set: string;
    because: SetTurnaroundOutput['movedPromises'][number]['because'] | 'readyUnknown';
  }[];
}

const MINUTE_MS = 60_000;
const LEVELS: readonly RiskLevel[] = ['stops', 'notSure', 'fine'];
const URGENCIES: readonly Urgency[] = ['now', 'today', 'soon', 'booked'];

/** Every case of the horizon as it stands by the plan: the worst first, then the most urgent, then the soonest needed. */
export function riskLines(facts: PlanningFacts, answer: SetTurnaroundOutput | null): RiskLine[] {
  const by = standings(facts, answer);
  const promised = new Map<string, Set<string>>();
  const codeOf = new Map<string, string>(facts.sets.map(({ id, code }) => [id, code]));
  const unknown = new Set(
    facts.sets.flatMap(({ code, readyMinutes }) => (readyMinutes === null ? [code] : [])),
  );
  for (const { caseId, setId } of facts.promises)
    promised.set(caseId, (promised.get(caseId) ?? new Set()).add(codeOf.get(setId) ?? setId));
  return facts.cases
    .map((one): RiskLine => {
      const standing = by.get(one.id) as CaseStanding;
      const given = answer?.assignments.find((assigned) => assigned.case === one.reference);
      const givenUp = (answer?.movedPromises ?? []).flatMap(({ case: of, from, because }) =>
        of === one.reference
          ? [{ set: from, because: unknown.has(from) ? ('readyUnknown' as const) : because }]
          : [],
      );
      return {
        case: one,
        standing,
        level: levelOf(one, standing, givenUp.length > 0),
        needBy: new Date(Date.parse(one.startsAt) - one.leadMinutes * MINUTE_MS).toISOString(),
        time: timeOf(standing, given),
        notPromised: (given?.sets ?? []).flatMap(({ set }) => (promised.get(one.id)?.has(set) ? [] : [set])),
        givenUp,
      };
    })
    .sort(worstFirst);
}

function levelOf({ confirmed }: CaseToServe, standing: CaseStanding, losesPromise: boolean): RiskLevel {
  switch (standing.kind) {
    case 'notPlanned':
    case 'shortOf':
    case 'noSetFree':
      return 'stops';
    case 'waiting':
      return 'notSure';
    case 'ready':
    case 'readyWith':
      return confirmed && !losesPromise && !standing.sets.some(({ tight }) => tight) ? 'fine' : 'notSure';
  }
}

function timeOf(
  standing: CaseStanding,
  given: SetTurnaroundOutput['assignments'][number] | undefined,
): RiskTime {
  switch (standing.kind) {
    case 'ready':
    case 'readyWith':
      return { kind: 'there' };
    case 'waiting':
      return {
        kind: 'coming',
        readyAt: standing.until,
        marginMinutes: Math.min(...(given?.sets ?? []).map(({ marginMinutes }) => marginMinutes)),
        tight: standing.sets.some(({ tight }) => tight),
      };
    case 'noSetFree':
      return standing.slipMinutes === null
        ? { kind: 'unknown' }
        : { kind: 'misses', slipMinutes: standing.slipMinutes };
    case 'notPlanned':
    case 'shortOf':
      return { kind: 'unknown' };
  }
}

function worstFirst(a: RiskLine, b: RiskLine): number {
  return (
    LEVELS.indexOf(a.level) - LEVELS.indexOf(b.level) ||
    URGENCIES.indexOf(a.case.urgency) - URGENCIES.indexOf(b.case.urgency) ||
    a.needBy.localeCompare(b.needBy) ||
    a.case.reference.localeCompare(b.case.reference)
  );
}

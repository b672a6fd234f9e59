import type { TurnStep } from '../sets/setState';
import { type BookedNeed, type Need, type NeededSet, needsOf } from './needs';
import { STAGES, type Stage, type StageTime } from './stageTimes';
import { isWantedNow, type WantedTurn } from './wanted';

/** The one thing to do next with a set. */
export type NextAct =
  | 'receive'
  | 'beginWash'
  | 'endWash'
  | 'count'
  | 'pack'
  | 'decideShort'
  | 'load'
  | 'unload'
  | 'accept'
  | 'liftHold';

/** An open set as the queue looks at it. */
export interface OpenSet extends Omit<NeededSet, 'quickestMinutes'> {
  /** When its present step began. */
  since: string;
  /** The end of the case it is in theatre for, where that is known. */
  caseEndsAt: string | null;
  /** Whether it was counted since it came to the bench. */
  counted: boolean;
  /** Its place in the order of what shortages stop: the lowest stops most. */
  rank: number;
}

export interface QueueLine {
  setId: string;
  act: NextAct;
  need: Need | null;
  /** Somebody asked for this turn to end sooner: then it comes before all others. */
  wanted: WantedTurn | null;
  /** When it must be in the sterile store: the case's start less the lead, or when it is wanted. */
  needBy: string | null;
  /** Minutes left of the present stage; `null` where nobody can say: it waits for a decision. */
  presentMinutes: number | null;
  /** The present stage, where it has a usual time. */
  present: StageTime | null;
  /** The stages that begin with the next act. */
  stages: StageTime[];
  /** Minutes of all of them. */
  takesMinutes: number;
  /** The latest moment to begin the next act. */
  beginBy: string | null;
  /** When it could be in the sterile store; `null` where it waits for a decision. */
  readyAt: string | null;
  /** Minutes by which it will miss when it is needed, at the least. */
  lateMinutes: number;
}

interface QueueInput {
  now: string;
  leadMinutes: number;
  /** Every set; those in the sterile store count towards what is there, and are not in the queue. */
  sets: readonly OpenSet[];
  cases: readonly BookedNeed[];
  /** The soonest first. */
  wanted: readonly WantedTurn[];
  timeOf: (configurationId: string, stage: Stage) => StageTime;
}

/**
 * What to do next: first what somebody wants sooner, then late sets, then by when a set is needed, then by what its shortage stops, then the one that has
 * waited longest.
 */
export function queueOf({ now, leadMinutes, sets, cases, wanted, timeOf }: QueueInput): QueueLine[] {
  const ways = new Map(sets.map((set) => [set.id, wayOf(set, now, timeOf)]));
  const needs = needsOf(
    sets.map((set) => ({ ...set, quickestMinutes: minutesOf(ways.get(set.id)) })),
    cases,
  );
  const open = sets.filter(({ step, withdrawn }) => step !== 'inSterileStore' && !withdrawn);
  const lines = open.map((set) => {
    const sooner = wanted.find((one) => one.setId === set.id && isWantedNow(one, set, now)) ?? null;
    const line = lineOf(
      set,
      ways.get(set.id) as Way,
      { need: needs.get(set.id) ?? null, sooner },
      now,
      leadMinutes,
    );
    return { set, line };
  });
  lines.sort(
    (a, b) =>
      instant(a.line.wanted?.wantedBy ?? null) - instant(b.line.wanted?.wantedBy ?? null) ||
      Number(b.line.lateMinutes > 0) - Number(a.line.lateMinutes > 0) ||
      instant(a.line.needBy) - instant(b.line.needBy) ||
      a.set.rank - b.set.rank ||
      Date.parse(a.set.since) - Date.parse(b.set.since) ||
      a.set.code.localeCompare(b.set.code),
  );
  return lines.map(({ line }) => line);
}

/** What lies between a set and the sterile store. */
interface Way {
  present: StageTime | null;
  presentMinutes: number | null;
  stages: StageTime[];
}

function wayOf(set: OpenSet, now: string, timeOf: QueueInput['timeOf']): Way {
  const times = (from: number) => STAGES.slice(from).map((stage) => timeOf(set.configurationId, stage));
  switch (set.step) {
    case 'inSterileStore':
      return { present: null, presentMinutes: 0, stages: [] };
    case 'inTheatre':
      return {
        present: null,
        presentMinutes: set.caseEndsAt === null ? null : minutesBetween(now, set.caseEndsAt),
        stages: times(0),
      };
    // whatever it was held for, washing and all after it is the most that can follow
    case 'held':
      return { present: null, presentMinutes: null, stages: times(STAGES.indexOf('washing')) };
    case 'shortAwaitingDecision':
      return { present: null, presentMinutes: null, stages: times(STAGES.indexOf('packed')) };
    default: {
      const at = STAGES.indexOf(set.step);
      // not counted: the work at the bench is still to be begun, however long the set has lain there
      if (set.step === 'onBench' && !set.counted)
        return { present: null, presentMinutes: 0, stages: times(at) };
      const present = timeOf(set.configurationId, set.step);
      const spent = minutesBetween(set.since, now);
      return { present, presentMinutes: Math.max(0, present.minutes - spent), stages: times(at + 1) };
    }
  }
}

/** A set that waits for a decision comes last among copies, whatever its stages take. */
const UNDECIDED_MINUTES = 1_000_000;

const minutesOf = (way: Way | undefined): number =>
  way === undefined ? UNDECIDED_MINUTES : (way.presentMinutes ?? UNDECIDED_MINUTES) + sumOf(way.stages);

function lineOf(
  set: OpenSet,
  way: Way,
  { need, sooner }: { need: Need | null; sooner: WantedTurn | null },
  now: string,
  leadMinutes: number,
): QueueLine {
  const takesMinutes = sumOf(way.stages);
  const neededBy = need === null ? null : later(need.startsAt, -leadMinutes);
  const needBy = sooner !== null && instant(sooner.wantedBy) < instant(neededBy) ? sooner.wantedBy : neededBy;
  const beginBy = needBy === null ? null : later(needBy, -takesMinutes);
  const readyAt = way.presentMinutes === null ? null : later(now, way.presentMinutes + takesMinutes);
  const missed =
    needBy === null || beginBy === null
      ? [0]
      : [signedMinutes(beginBy, now), readyAt === null ? 0 : signedMinutes(needBy, readyAt)];
  return {
    setId: set.id,
    act: nextAct(set.step, set.counted),
    need,
    wanted: sooner,
    needBy,
    ...way,
    takesMinutes,
    beginBy,
    readyAt,
    lateMinutes: Math.max(0, ...missed),
  };
}

/** What is done next with a set at this step; a set in the sterile store waits for nobody. */
export function nextAct(step: TurnStep, counted: boolean): NextAct {
  switch (step) {
    case 'inTheatre':
      return 'receive';
    case 'comingBack':
      return 'beginWash';
    case 'washing':
      return 'endWash';
    case 'onBench':
      return counted ? 'pack' : 'count';
    case 'shortAwaitingDecision':
      return 'decideShort';
    case 'packed':
      return 'load';
    case 'inSteriliser':
      return 'unload';
    case 'awaitingAcceptance':
      return 'accept';
    case 'held':
      return 'liftHold';
    case 'inSterileStore':
      throw new Error('a set in the sterile store is not in the queue');
  }
}

const sumOf = (stages: readonly StageTime[]) => stages.reduce((sum, { minutes }) => sum + minutes, 0);
const later = (at: string, minutes: number) => new Date(Date.parse(at) + minutes * 60_000).toISOString();
const signedMinutes = (from: string, to: string) => Math.floor((Date.parse(to) - Date.parse(from)) / 60_000);
const minutesBetween = (from: string, to: string) => Math.max(0, signedMinutes(from, to));
/** Later than any moment a case can begin. */
const NEVER_MS = 8.64e15;
const instant = (at: string | null) => (at === null ? NEVER_MS : Date.parse(at));

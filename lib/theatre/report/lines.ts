import { type CaseStanding, standings } from '../planning/standing';
import type { DayCaseFacts, DayReportFacts } from './facts';

/** Where a case is counted at the head of a report. */
export type Bucket =
  | 'ready'
  /** It would be ready, by a draft that no surgeon has confirmed. */
  | 'notConfirmed'
  | 'waiting'
  | 'short'
  | 'notPlanned'
  | 'begun'
  | 'over'
  /** Beyond what is planned ahead. */
  | 'notKnown';

/** A set that a case counts on. */
export interface LineSet {
  /** `null`: it left service since. */
  setId: string | null;
  code: string;
  promised: boolean;
  /** When it is ready as planned, half of the time or nine times in ten as the hospital plans; `null`: not known. */
  readyAt: string | null;
  there: boolean;
  /** The case it comes back from before. */
  afterCase: string | null;
  /** Minutes between ready and needed; `null`: not known. */
  marginMinutes: number | null;
  tight: boolean;
}

export interface CaseLine {
  facts: DayCaseFacts;
  standing: CaseStanding | null;
  bucket: Bucket;
  confirmed: boolean;
  /** When its sets must stand in theatre; `null`: not known, or past. */
  needByAt: string | null;
  sets: LineSet[];
  pouches: string[];
  /** The least margin of its sets; `null`: not known, or it needs none. */
  marginMinutes: number | null;
}

/** The cases of a day that are on the list, by theatre and time, each with how it stands and what it gets. */
export function caseLines({ cases, planning, answer, now }: DayReportFacts): CaseLine[] {
  const standing = standings(planning, answer);
  const serving = new Map(planning.cases.map((one) => [one.id as string, one]));
  const given = new Map(answer?.assignments.map((one) => [one.case, one]) ?? []);
  const without = new Map(answer?.unserved.map((one) => [one.case, one]) ?? []);
  const idOf = new Map(planning.sets.map(({ id, code }) => [code, id as string]));
  return cases
    .filter(({ cancelled }) => cancelled === null)
    .map((facts): CaseLine => {
      const toServe = serving.get(facts.id);
      const stands = standing.get(facts.id) ?? null;
      const gets = given.get(facts.reference);
      const needByMs =
        gets?.needByMs ??
        without.get(facts.reference)?.needByMs ??
        (toServe ? Date.parse(facts.startsAt) - toServe.leadMinutes * 60_000 : null);
      const tight = new Map(
        stands !== null && 'sets' in stands ? stands.sets.map((set) => [set.code, set] as const) : [],
      );
      const sets: LineSet[] =
        gets?.sets.map(({ set, readyAtMs, marginMinutes, afterCase }) => ({
          setId: idOf.get(set) ?? null,
          code: set,
          promised: facts.promised.some(({ code }) => code === set),
          readyAt: new Date(readyAtMs).toISOString(),
          there: tight.get(set)?.there ?? false,
          afterCase,
          marginMinutes,
          tight: tight.get(set)?.tight ?? false,
        })) ??
        facts.promised.map(
          ({ setId, code, inUse }): LineSet => ({
            setId,
            code,
            promised: true,
            readyAt: null,
            there: inUse,
            afterCase: null,
            marginMinutes: null,
            tight: false,
          }),
        );
      const margins = sets.flatMap(({ marginMinutes }) => marginMinutes ?? []);
      return {
        facts,
        standing: stands,
        confirmed: toServe?.confirmed ?? facts.plan.confirmedVersion !== null,
        bucket: bucketOf(facts, stands, toServe?.confirmed ?? false, now),
        needByAt: needByMs === null ? null : new Date(needByMs).toISOString(),
        sets,
        pouches: gets?.pouches ?? [],
        marginMinutes: margins.length === 0 ? null : Math.min(...margins),
      };
    })
    .sort(
      (a, b) =>
        a.facts.theatre.localeCompare(b.facts.theatre, 'en-GB', { numeric: true }) ||
        a.facts.startsAt.localeCompare(b.facts.startsAt),
    );
}

function bucketOf(
  { startsAt, endsAt, promised }: DayCaseFacts,
  standing: CaseStanding | null,
  confirmed: boolean,
  now: string,
): Bucket {
  if (endsAt <= now) return 'over';
  if (standing === null) return startsAt <= now || promised.some(({ inUse }) => inUse) ? 'begun' : 'notKnown';
  switch (standing.kind) {
    case 'notPlanned':
      return 'notPlanned';
    case 'shortOf':
    case 'noSetFree':
      return 'short';
    case 'waiting':
      return 'waiting';
    default:
      return confirmed ? 'ready' : 'notConfirmed';
  }
}

/** How many cases of a day are in each bucket. */
export function bucketCounts(lines: readonly CaseLine[]): Record<Bucket, number> {
  const counts: Record<Bucket, number> = {
    ready: 0,
    notConfirmed: 0,
    waiting: 0,
    short: 0,
    notPlanned: 0,
    begun: 0,
    over: 0,
    notKnown: 0,
  };
  for (const { bucket } of lines) counts[bucket] += 1;
  return counts;
}

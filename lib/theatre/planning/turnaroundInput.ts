import type { z } from 'zod';
import type { setTurnaroundInput } from '../../calculations/setTurnaround/schema';
import type { WayToServe } from '../../kits/waysToServe';
import type { CaseToServe, PlanningFacts } from './facts';
import { spokenFor } from './spokenFor';

type Input = z.input<typeof setTurnaroundInput>;
type Way = Input['cases'][number]['ways'][number];

const MINUTE_MS = 60_000;
/** What makes one way less welcome than another: what it leaves out of what is wished, then trays, then packs. */
const NOT_AS_WISHED = 50;
const TRAY = 4;
const MOST_PENALTY = 100;
/** As many as the calculation takes; the best come first. */
export const MOST_WAYS = 12;

/**
 * The facts as the calculation `set-turnaround` asks for them, by case reference, set code, name of the configuration and
 * stock id. A case that has no way (not planned, or short of what no set has) is in it only where a person promised sets to it:
 * those stay with it whether or not the plan asks for them. `null`: there is nothing to give sets to.
 *
 * @param repairsFor references of cases whose repairs are asked for: a repair ends what was promised to its case
 */
export function turnaroundInput(facts: PlanningFacts, repairsFor: readonly string[] = []): Input | null {
  const { rule } = facts;
  const codeOf = new Map<string, string>(facts.sets.map(({ id, code }) => [id, code]));
  const isSpokenFor = spokenFor(facts, repairsFor);
  const cases = facts.cases.flatMap((one): Input['cases'] => {
    const ways = waysOf(one, facts, (set) => (isSpokenFor(set, one) ? undefined : codeOf.get(set)), codeOf);
    if (ways.length === 0) return [];
    const { reference, startsAt, endsAt, leadMinutes, urgency, theatreId } = one;
    return [
      {
        case: reference,
        startAtMs: Date.parse(startsAt),
        endAtMs: Date.parse(endsAt),
        leadMinutes,
        urgency,
        theatre: theatreId,
        ways,
      },
    ];
  });
  if (cases.length === 0 || facts.configurations.length === 0) return null;
  const planned = new Set(cases.map((one) => one.case));
  const referenceOf = new Map<string, string>(facts.cases.map(({ id, reference }) => [id, reference]));
  const nowMs = Date.parse(facts.now);
  // what stands in the store can be had for a case whose lead has begun, however little is left of it
  const thereMs = Math.min(
    nowMs,
    ...cases.map(
      ({ startAtMs, leadMinutes = 0 }) => startAtMs - (leadMinutes + rule.marginMinutes) * MINUTE_MS,
    ),
  );
  const atMs = (minutes: number) => (minutes === 0 ? thereMs : nowMs + minutes * MINUTE_MS);
  return {
    cases,
    configurations: facts.configurations.map(({ name, stages }) => ({ configuration: name, stages })),
    sets: facts.sets.map(({ code, configuration, readyMinutes }) => ({
      set: code,
      configuration,
      ready: readyMinutes && {
        p50AtMs: atMs(readyMinutes.p50),
        p90AtMs: atMs(readyMinutes.p90),
      },
    })),
    pouches: facts.pouches.map(({ stockId, quantity }) => ({ pouch: stockId, quantity })),
    promises: facts.promises.flatMap(({ caseId, setId, chosenBy }) => {
      const [one, set] = [referenceOf.get(caseId), codeOf.get(setId)];
      if (one === undefined || set === undefined || !planned.has(one)) return [];
      return [{ case: one, set, fixed: chosenBy === 'person' }];
    }),
    planBy: facts.rule.planBy,
    wantedMarginMinutes: facts.rule.marginMinutes,
  };
}

function waysOf(
  { id, ways }: CaseToServe,
  { promises }: PlanningFacts,
  /** Of a set that may be given to the case. */
  freeCodeOf: (set: string) => string | undefined,
  codeOf: ReadonlyMap<string, string>,
): Way[] {
  const chosen = promises
    .filter(({ caseId, chosenBy }) => caseId === id && chosenBy === 'person')
    .flatMap(({ setId }) => codeOf.get(setId) ?? []);
  const stated = (ways?.ways ?? [])
    .map((way) => wayOf(way, freeCodeOf))
    .filter(({ parts }) => parts.length > 0);
  if (stated.length === 0)
    return chosen.length === 0 ? [] : [{ parts: chosen.map((set) => ({ sets: [set] })) }];
  return stated.slice(0, MOST_WAYS).map((way) => withChosen(way, chosen));
}

function wayOf({ parts, packs, asWished }: WayToServe, codeOf: (set: string) => string | undefined): Way {
  const pouches = packs.flatMap(({ stockId, quantity }) => Array.from({ length: quantity }, () => stockId));
  return {
    parts: parts.map((part) => ({ sets: part.flatMap((set) => codeOf(set) ?? []) })),
    pouches,
    penalty: Math.min(MOST_PENALTY, (asWished ? 0 : NOT_AS_WISHED) + TRAY * parts.length + pouches.length),
  };
}

/** The way with a part for each chosen set that none of its parts could take. */
function withChosen(way: Way, chosen: readonly string[]): Way {
  const more = chosen.filter((set) => !way.parts.some(({ sets }) => sets?.includes(set)));
  return more.length === 0 ? way : { ...way, parts: [...way.parts, ...more.map((set) => ({ sets: [set] }))] };
}

import type { SetTurnaroundOutput } from '../../calculations/setTurnaround/output';
import type { ConfigurationId } from '../../identity/ids';
import { wallClock } from '../localTime';
import type { Urgency } from '../surgicalCase';
import type { CaseToServe, PlanningFacts } from './facts';
import { readyBeside } from './readyBeside';

type Repair = SetTurnaroundOutput['repairs'][number]['repairs'][number];
export type RepairKind = Repair['kind'];
type Cost = Repair['cost'];

/** A case that a repair begins at another time. */
export interface MovedSlot {
  reference: string;
  from: string;
  startsAt: string;
  endsAt: string;
}

/** A repair as it is offered to people: what it does, when the case is then ready, and what it takes from others. */
export interface Offer {
  kind: RepairKind;
  /** All that applying it does, in one text: what reads otherwise is another repair. */
  key: string;
  /** The sets the case then has, and the pouches that go with them. */
  sets: string[];
  pouches: string[];
  /** When all of its sets can be had: `there` now, an instant, or `null` where nobody can say. */
  ready: 'there' | { at: string } | null;
  cost: Cost;
  /** Cases that begin at another time, its own among them. */
  moves: MovedSlot[];
  /** The sets of every case whose promises change, its own first. */
  gives: { reference: string; sets: string[] }[];
  /** One turn made quicker. */
  quicker: {
    set: string;
    afterCase: string | null;
    byMinutes: number;
    wantedBy: string;
    halfTheTime: boolean;
  } | null;
  /** Sets from elsewhere: which kinds, from when until when. */
  elsewhere: { missing: string[]; configurations: ConfigurationId[]; neededBy: string; until: string } | null;
  /** The case that has the theatre at the new time: it cannot be moved there. */
  theatreTakenBy: string | null;
}

/** More of the hospital's own are no help at 06:30; the kit and the calculation show all. */
const MOST_OFFERS = 6;
const FIVE_MINUTES_MS = 300_000;

/** What could be done for a case, the cheapest first. */
export function offersFor(
  facts: PlanningFacts,
  answer: SetTurnaroundOutput | null,
  one: CaseToServe,
): Offer[] {
  const found = answer?.repairs.find((of) => of.case === one.reference)?.repairs ?? [];
  const given = answer?.assignments.find((assigned) => assigned.case === one.reference);
  const offers = [...(given ? asPlanned(facts, answer, one, given) : []), ...found].map((repair) =>
    offerOf(facts, answer, one, repair),
  );
  const now = given && readyAt(offerOf(facts, answer, one, { kind: 'otherSets', ...given, ...plain(given) }));
  const seen = new Set<string>();
  const useful = offers.filter((offer) => {
    const { key, kind, quicker, sets } = offer;
    if (seen.has(key)) return false;
    seen.add(key);
    if (quicker && quicker.wantedBy <= facts.now) return false;
    // what changes the day is no change of the order
    if (kind === 'changeOrder' && offer.moves.some(({ from, startsAt }) => dayOf(from) !== dayOf(startsAt)))
      return false;
    if (kind === 'otherSets' && sameSets(sets, promisedTo(facts, one))) return false;
    if (kind !== 'otherSets' || now === undefined) return true;
    // a case that is served gains by other sets only where they are there sooner
    return sameSets(sets, plain(given).sets) || readyAt(offer) < now;
  });
  let own = 0;
  return rankOffers(useful, facts.cases).filter(({ elsewhere }) => {
    if (elsewhere !== null) return true;
    own += 1;
    return own <= MOST_OFFERS;
  });
}

type Given = SetTurnaroundOutput['assignments'][number];
const plain = (given: Given | undefined) => ({
  sets: (given?.sets ?? []).map(({ set }) => set),
  cost: { unserved: [], moved: [] } as Cost,
});
const readyAt = ({ ready }: Offer) =>
  ready === 'there' ? '' : ready === null ? '9999-12-31T23:59:59.999Z' : ready.at;
const dayOf = (at: string) => wallClock(at).date;
const sameSets = (a: readonly string[], b: readonly string[]) =>
  a.length === b.length && a.every((set) => b.includes(set));

/** Codes of the sets that are promised to a case. */
function promisedTo({ promises, sets }: PlanningFacts, one: CaseToServe): string[] {
  const codeOf = new Map<string, string>(sets.map(({ id, code }) => [id, code]));
  return promises.flatMap(({ caseId, setId }) => (caseId === one.id ? (codeOf.get(setId) ?? []) : []));
}

/** Where the plan gives it sets that are not promised to it yet: to promise them, with what that takes from others. */
function asPlanned(
  facts: PlanningFacts,
  answer: SetTurnaroundOutput | null,
  one: CaseToServe,
  given: Given,
): Repair[] {
  const { promises, cases, sets } = facts;
  const codeOf = new Map<string, string>(sets.map(({ id, code }) => [id, code]));
  const referenceOf = new Map<string, string>(cases.map(({ id, reference }) => [id, reference]));
  const wanted = given.sets.map(({ set }) => set);
  if (sameSets(promisedTo(facts, one), wanted)) return [];
  const holders = new Set(
    promises.flatMap(({ caseId, setId }) =>
      caseId !== one.id && wanted.includes(codeOf.get(setId) ?? '') ? [referenceOf.get(caseId)] : [],
    ),
  );
  const moved = (answer?.movedPromises ?? [])
    .filter(({ case: other, from }) => holders.has(other) && wanted.includes(from))
    .map(({ case: other, from, to }) => ({ case: other, from, to }));
  const { way, pouches } = given;
  return [{ kind: 'otherSets', way, sets: wanted, pouches, cost: { unserved: [], moved } }];
}

function offerOf(
  facts: PlanningFacts,
  answer: SetTurnaroundOutput | null,
  one: CaseToServe,
  repair: Repair,
): Offer {
  const moves = movesOf(facts, one, repair);
  const sets = 'sets' in repair ? repair.sets : [];
  const pouches = 'pouches' in repair ? repair.pouches : [];
  const { cost, kind } = repair;
  const takes = kind === 'otherSets' || kind === 'changeOrder' || kind === 'laterSlot';
  const others = new Map(
    cost.moved.flatMap((moved) => (moved.case === one.reference ? [] : [[moved.case, moved.to] as const])),
  );
  const gives = takes
    ? [{ reference: one.reference, sets }, ...[...others].map(([reference, to]) => ({ reference, sets: to }))]
    : [];
  const quicker =
    repair.kind === 'quickerTurn'
      ? {
          set: repair.set,
          afterCase: repair.afterCase,
          byMinutes: repair.byMinutes,
          wantedBy: new Date(repair.readyByMs).toISOString(),
          halfTheTime: repair.halfTheTime,
        }
      : null;
  const elsewhere =
    repair.kind === 'borrow' || repair.kind === 'loan'
      ? {
          missing: repair.missing,
          configurations: configurationsOf(facts, repair.missing),
          neededBy: new Date(repair.neededByMs).toISOString(),
          until: new Date(repair.untilMs).toISOString(),
        }
      : null;
  return {
    kind,
    key: JSON.stringify([
      kind,
      [...sets].sort(),
      [...pouches].sort(),
      moves.map(({ reference, startsAt }) => [reference, startsAt]),
      gives.map(({ reference, sets: to }) => [reference, [...to].sort()]),
      [...cost.unserved].sort(),
      quicker && [quicker.set, quicker.afterCase, quicker.wantedBy],
      elsewhere?.missing ?? null,
    ]),
    sets,
    pouches,
    ready: takes
      ? readyBeside(facts, answer, one, { sets, cost, moves })
      : quicker && { at: quicker.wantedBy },
    cost,
    moves,
    gives,
    quicker,
    elsewhere,
    theatreTakenBy: kind === 'laterSlot' ? takenBy(facts, one, moves) : null,
  };
}

function movesOf({ cases }: PlanningFacts, one: CaseToServe, repair: Repair): MovedSlot[] {
  if (repair.kind === 'laterSlot') {
    // a case begins on a round minute
    return [slotOf(one, Math.ceil(repair.startAtMs / FIVE_MINUTES_MS) * FIVE_MINUTES_MS)];
  }
  if (repair.kind !== 'changeOrder') return [];
  const other = cases.find(({ reference }) => reference === repair.withCase);
  return [slotOf(one, repair.startAtMs), ...(other ? [slotOf(other, repair.otherStartAtMs)] : [])];
}

function slotOf({ reference, startsAt, endsAt }: CaseToServe, startMs: number): MovedSlot {
  const minutesMs = Date.parse(endsAt) - Date.parse(startsAt);
  return {
    reference,
    from: startsAt,
    startsAt: new Date(startMs).toISOString(),
    endsAt: new Date(startMs + minutesMs).toISOString(),
  };
}

function takenBy({ cases }: PlanningFacts, one: CaseToServe, [slot]: readonly MovedSlot[]): string | null {
  const there = cases.find(
    ({ id, theatreId, startsAt, endsAt }) =>
      id !== one.id &&
      theatreId === one.theatreId &&
      slot !== undefined &&
      startsAt < slot.endsAt &&
      endsAt > slot.startsAt,
  );
  return there?.reference ?? null;
}

const configurationsOf = ({ configurations }: PlanningFacts, missing: readonly string[]) =>
  configurations
    .filter(({ name }) => missing.some((words) => words === name || words.split(' or ').includes(name)))
    .map(({ id }) => id);

const KINDS: readonly RepairKind[] = [
  'otherSets',
  'quickerTurn',
  'changeOrder',
  'laterSlot',
  'borrow',
  'loan',
];
const URGENCIES: readonly Urgency[] = ['now', 'today', 'soon', 'booked'];

/**
 * Cheapest first: fewest other cases without sets, the most urgent counting most; then fewest promises moved; what cannot be
 * done at once after what can; then the kinds in their order; then what is there soonest, with fewest trays and pouches.
 */
export function rankOffers(offers: readonly Offer[], cases: readonly CaseToServe[]): Offer[] {
  const urgencyOf = new Map(cases.map(({ reference, urgency }) => [reference, urgency]));
  const weight = (offer: Offer): (number | string)[] => [
    ...URGENCIES.map((urgency) => offer.cost.unserved.filter((one) => urgencyOf.get(one) === urgency).length),
    offer.cost.moved.filter((moved) => moved.case !== offer.gives[0]?.reference).length,
    offer.theatreTakenBy === null ? 0 : 1,
    KINDS.indexOf(offer.kind),
    readyAt(offer),
    offer.sets.length,
    offer.pouches.length,
  ];
  return offers
    .map((offer, at) => ({ offer, at, weight: weight(offer) }))
    .sort((a, b) => {
      for (const [place, mine] of a.weight.entries()) {
        const theirs = b.weight[place] as number | string;
        if (mine !== theirs) return mine < theirs ? -1 : 1;
      }
      return a.at - b.at;
    })
    .map(({ offer }) => offer);
}

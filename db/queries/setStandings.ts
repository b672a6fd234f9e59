import { and, eq, gt, inArray, isNull, ne } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import { type CaseId, caseId, type ItemId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import type { Construct } from '@/lib/plans/plan';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import type { Pieces } from '@/lib/sets/buildable';
import { whyNotForCase } from '@/lib/sets/short/decision';
import {
  byWhatIsStopped,
  type JudgedCase,
  lacksNothing,
  type SetStanding,
  type StandingGround,
  standingAmong,
} from '@/lib/sets/standing';
import { wallClock } from '@/lib/theatre/localTime';
import type { Database } from '../client';
import { planFromRow } from '../mappers/plan';
import { mayRead, type Reading } from '../reader';
import { cases, plans, setPromises } from '../schema';
import { keptCatalogue } from './caseKit';
import { loadFitEngine } from './fitRules';
import { itemsById } from './itemsById';
import { keptVersions } from './keptVersions';
import { ownStandings } from './ownStandings';
import { findSet, listSets, loadSetSettings, type SetOnFile } from './sets';
import { presentDecisions } from './short/decisions';
import { piecesInDate, type SinglePack, singlePacks } from './singlePacks';
import { whatLiesBeside } from './whatLiesBeside';

/** A set as it is now, and how it stands. */
export interface StandingSet {
  set: SetOnFile;
  standing: SetStanding;
  /** The version in force, when the set still follows an older one. */
  newer: number | null;
}

export interface SetStandings {
  /** By what a shortage stops, then by code. */
  sets: StandingSet[];
  items: ReadonlyMap<ItemId, Item>;
}

/**
 * Every set of the hospital with its completeness, what it allows to be built and what its shortage stops, the most
 * urgent first; tests/bench measures it for 3,000. What is the same as before, or the same for sets that hold the same, is
 * not worked out again.
 *
 * @param only   judges this one set, with every case it is promised to; the others are read for what lies beside it
 * @param change what if a set held something else
 */
export async function loadSetStandings(
  db: Reading,
  {
    now,
    only = null,
    change = (set) => set,
  }: { now: string; only?: string | null; change?: (set: SetOnFile) => SetOnFile },
): Promise<SetStandings> {
  mayRead(db, 'readHospital');
  const [sets, versions, catalogue, engine, settings, packs, booked, decisions] = await Promise.all([
    setsToLookAt(db, only),
    keptVersions(db),
    keptCatalogue(db),
    loadFitEngine(db),
    loadSetSettings(db),
    singlePacks(db.read, now),
    plansOfPromisedCases(db, now),
    presentDecisions(db.read),
  ]);
  const serves = (set: SetOnFile, forCase: string) => {
    const present = decisions.get(set.id);
    return (
      !set.outOfService && !(present && whyNotForCase(present.decision, present.named, forCase, now) !== null)
    );
  };
  const items = itemsById(catalogue);
  const today = wallClock(now).date;
  const nobodys = piecesInDate(packs, today, { setId: null, forCase: null });
  const ground: StandingGround = { catalogue, engine, items, settings, packs: nobodys };
  const travels = new Set(packs.flatMap(({ with: sent }) => sent));
  // what travels with a set is there for it, and for no other
  const groundOf = ({ id }: SetOnFile): StandingGround =>
    travels.has(id) ? { ...ground, packs: piecesInDate(packs, today, { setId: id, forCase: null }) } : ground;
  const newest = new Map(
    [...versions.values()].flatMap((version) =>
      version.status === 'inForce' ? [[version.configurationId, version] as const] : [],
    ),
  );
  const beside = whatLiesBeside({ sets, packs, serves, hasDecision: ({ id }) => decisions.has(id) });
  const own = ownStandings(ground);
  const judged = sets.filter(({ id }) => only === null || id === only).map(change);
  const standing = judged.map((set): StandingSet => {
    const version = versions.get(set.version.id);
    const inForce = newest.get(set.configuration.id);
    const about = {
      lines: set.lines,
      boxes: [version?.basketItemId ?? null, version?.containerItemId ?? null],
      promises: version?.promises ?? [],
    };
    // a set that lacks nothing stops no case, and in a list that is all that is asked
    const cases = only === null && lacksNothing(set.lines) ? [] : casesOf(set, booked, packs, beside);
    return {
      set,
      standing: standingAmong(own(about, groundOf(set)), { ...about, foreign: set.foreign, cases }, ground),
      newer: inForce && inForce.id !== set.version.id ? inForce.version : null,
    };
  });
  return { sets: byWhatIsStopped(standing, ({ set }) => set.code), items };
}

/** All sets, as far as they matter: beside a set that is promised to no case nothing is looked at. */
async function setsToLookAt(db: Reading, only: string | null): Promise<SetOnFile[]> {
  const one = only === null ? null : await findSet(db, only);
  if (only !== null && (one?.promisedTo ?? []).length === 0) return one === null ? [] : [one];
  return listSets(db);
}

/** How one set stands, or `null` when there is none of that id. */
export async function loadSetStanding(
  db: Reading,
  id: string,
  now: string,
): Promise<(StandingSet & Pick<SetStandings, 'items'>) | null> {
  mayRead(db, 'readHospital');
  const { sets, items } = await loadSetStandings(db, { now, only: id });
  return sets[0] ? { ...sets[0], items } : null;
}

/**
 * How a set would stand if it held what was entered so far; lines nobody has entered yet are taken as whole. What others
 * found in it is not looked at: whoever checks must not learn it.
 */
export async function loadShortageOf(
  db: Reading,
  id: string,
  found: ReadonlyMap<string, number>,
  now: string,
  foreign = 0,
): Promise<(StandingSet & Pick<SetStandings, 'items'>) | null> {
  mayRead(db, 'readHospital');
  const change = (set: SetOnFile): SetOnFile => ({
    ...set,
    lines: set.lines.map((line) => ({ ...line, found: found.get(line.id) ?? line.expected, unsound: 0 })),
    foreign:
      foreign === 0
        ? []
        : set.lines.slice(0, 1).map(({ itemId }) => ({ itemId, quantity: foreign, note: null })),
  });
  const { sets, items } = await loadSetStandings(db, { now, only: id, change });
  return sets[0] ? { ...sets[0], items } : null;
}

type BookedPlan = Pick<JudgedCase, 'caseId' | 'reference' | 'startsAt' | 'construct'> & {
  caseDate: PlainDate;
};

/** The plans of cases still to come that a set is promised to, with what else will be there for each. */
function casesOf(
  set: SetOnFile,
  booked: ReadonlyMap<CaseId, BookedPlan>,
  packs: readonly SinglePack[],
  beside: (set: SetOnFile, forCase: string, caseDate: PlainDate) => Pieces[],
): JudgedCase[] {
  return set.promisedTo.flatMap((promise): JudgedCase[] => {
    const plan = booked.get(caseId.parse(promise.caseId));
    if (!plan) return [];
    const { caseDate, ...rest } = plan;
    const { caseId: forCase } = plan;
    return [
      {
        ...rest,
        beside: beside(set, forCase, caseDate),
        packs: piecesInDate(packs, caseDate, { setId: set.id, forCase }),
      },
    ];
  });
}

/** Plans parsed before, by id and revision: the same construct object keeps what is remembered about it good. */
const keptPlans = new WeakMap<Database['read'], Map<string, { revision: number; construct: Construct }>>();

/** Of each case still to come that a set is promised to: its confirmed plan, or its draft. */
async function plansOfPromisedCases({ read }: Reading, now: string): Promise<Map<CaseId, BookedPlan>> {
  const rows = await read
    .select({ plan: plans, booked: cases })
    .from(cases)
    .innerJoin(plans, and(eq(plans.caseId, cases.id), ne(plans.status, 'superseded')))
    .where(
      and(
        inArray(cases.id, read.select({ id: setPromises.caseId }).from(setPromises)),
        gt(cases.endsAt, now),
        isNull(cases.cancelledAt),
      ),
    );
  const kept = keptPlans.get(read) ?? new Map<string, { revision: number; construct: Construct }>();
  keptPlans.set(read, kept);
  const found = new Map<CaseId, BookedPlan>();
  for (const [id, versions] of groupBy(rows, ({ booked }) => caseId.parse(booked.id))) {
    const row = versions.find(({ plan }) => plan.status === 'confirmed') ?? versions[0];
    if (!row) continue;
    const before = kept.get(row.plan.id);
    const construct =
      before?.revision === row.plan.revision ? before.construct : planFromRow(row.plan).construct;
    kept.set(row.plan.id, { revision: row.plan.revision, construct });
    const { reference, startsAt, caseDate } = row.booked;
    found.set(id, { caseId: id, reference, startsAt, construct, caseDate: plainDate.parse(caseDate) });
  }
  return found;
}

import { and, eq, gt, isNull, ne } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import { type CaseId, type ConfigurationId, caseId, type ItemId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import type { Construct } from '@/lib/plans/plan';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { type Pieces, presentPieces } from '@/lib/sets/buildable';
import { whyNotForCase } from '@/lib/sets/short/decision';
import {
  compareStandings,
  type JudgedCase,
  type SetStanding,
  type StandingGround,
  standingOf,
} from '@/lib/sets/standing';
import { wallClock } from '@/lib/theatre/localTime';
import type { Database } from '../client';
import { planFromRow } from '../mappers/plan';
import { mayRead, type Reading } from '../reader';
import { cases, plans, setPromises } from '../schema';
import { keptCatalogue } from './caseKit';
import { loadFitEngine } from './fitRules';
import { keptVersions } from './keptVersions';
import { listSets, loadSetSettings, type SetOnFile } from './sets';
import { presentDecisions } from './short/decisions';
import { piecesInDate, type SinglePack, singlePacks } from './singlePacks';

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
 * urgent first. About 100 ms for 55 sets the first time, and a third of that from then on.
 *
 * @param only   judges this one set; the others are read all the same, for what lies beside it
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
    listSets(db),
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
  const judged = sets.filter(({ id }) => only === null || id === only).map(change);
  const standing = judged.map((set): StandingSet => {
    const version = versions.get(set.version.id);
    const inForce = [...versions.values()].find(
      ({ configurationId, status }) => configurationId === set.configuration.id && status === 'inForce',
    );
    return {
      set,
      standing: standingOf(
        {
          lines: set.lines,
          boxes: [version?.basketItemId ?? null, version?.containerItemId ?? null],
          foreign: set.foreign,
          promises: version?.promises ?? [],
          cases: casesOf(set, sets, booked, packs, serves),
        },
        groundOf(set),
      ),
      newer: inForce && inForce.id !== set.version.id ? inForce.version : null,
    };
  });
  standing.sort((a, b) => compareStandings(a.standing, b.standing) || a.set.code.localeCompare(b.set.code));
  return { sets: standing, items };
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

const named = new WeakMap<readonly Item[], ReadonlyMap<ItemId, Item>>();

function itemsById(catalogue: readonly Item[]): ReadonlyMap<ItemId, Item> {
  const known = named.get(catalogue) ?? new Map(catalogue.map((item) => [item.id, item]));
  named.set(catalogue, known);
  return known;
}

type BookedPlan = Pick<JudgedCase, 'caseId' | 'reference' | 'startsAt' | 'construct'> & {
  caseDate: PlainDate;
};

/**
 * The plans of cases still to come that a set is promised to, with what else will be there for each: nothing that is out
 * of service, and nothing that goes short for another case.
 */
function casesOf(
  set: SetOnFile,
  sets: readonly SetOnFile[],
  booked: ReadonlyMap<CaseId, BookedPlan>,
  packs: readonly SinglePack[],
  serves: (set: SetOnFile, forCase: string) => boolean,
): JudgedCase[] {
  return set.promisedTo.flatMap((promise): JudgedCase[] => {
    const plan = booked.get(caseId.parse(promise.caseId));
    if (!plan) return [];
    const promised = sets.filter((one) => one.promisedTo.some((to) => to.caseId === promise.caseId));
    const kinds = new Set<ConfigurationId>(promised.map((one) => one.configuration.id));
    const beside = sets.filter(
      (one) =>
        one.id !== set.id &&
        serves(one, plan.caseId) &&
        (promised.includes(one) || (!kinds.has(one.configuration.id) && canBeFetched(one, plan.caseDate))),
    );
    const { caseDate, ...rest } = plan;
    const { caseId: forCase } = plan;
    return [
      {
        ...rest,
        beside: heaps(beside, packs),
        packs: piecesInDate(packs, caseDate, { setId: set.id, forCase }),
      },
    ];
  });
}

function canBeFetched({ step, useBy, promisedTo }: SetOnFile, on: PlainDate): boolean {
  return step === 'inSterileStore' && promisedTo.length === 0 && (useBy === null || useBy >= on);
}

/** What lies in some sets, and what travels with them. */
function heaps(sets: readonly SetOnFile[], packs: readonly SinglePack[]): Pieces[] {
  const found = new Map<ItemId, number>();
  const add = (id: ItemId, pieces: number) => found.set(id, (found.get(id) ?? 0) + pieces);
  for (const { lines } of sets) for (const piece of presentPieces(lines)) add(piece.itemId, piece.found);
  const there = new Set<string>(sets.map(({ id }) => id));
  for (const { itemId: id, with: sent } of packs) add(id, sent.filter((one) => there.has(one)).length);
  return [...found].map(([id, pieces]) => ({ itemId: id, found: pieces }));
}

/** Plans parsed before, by id and revision: the same construct object keeps what is remembered about it good. */
const keptPlans = new WeakMap<Database['read'], Map<string, { revision: number; construct: Construct }>>();

/** Of each case still to come that a set is promised to: its confirmed plan, or its draft. */
async function plansOfPromisedCases({ read }: Reading, now: string): Promise<Map<CaseId, BookedPlan>> {
  const rows = await read
    .selectDistinct({ plan: plans, booked: cases })
    .from(plans)
    .innerJoin(cases, eq(cases.id, plans.caseId))
    .innerJoin(setPromises, eq(setPromises.caseId, cases.id))
    .where(and(gt(cases.endsAt, now), isNull(cases.cancelledAt), ne(plans.status, 'superseded')));
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

import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import { and, asc, eq, gt, isNull, lt, ne, notInArray, sql } from 'drizzle-orm';
import { type CaseId, caseId, configurationId, setId } from '@/lib/identity/ids';
import { waysToServe } from '@/lib/kits/waysToServe';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import { turnStep } from '@/lib/sets/setState';
import type { CaseToServe, PlanningFacts, SetToGive } from '@/lib/theatre/planning/facts';
import { MOST_WAYS } from '@/lib/theatre/planning/turnaroundInput';
import { urgency } from '@/lib/theatre/surgicalCase';
import { turnTime } from '@/lib/turnaround/turnTime';
import { STAGES } from '@/lib/turns/stageTimes';
import { wayLeft } from '@/lib/turns/whenReady';
import { planFromRow } from '../../mappers/plan';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import {
  cases,
  configurations,
  configurationVersions,
  counts,
  plans,
  setPromises,
  sets,
  theatres,
} from '../../schema';
import { kitBasis } from '../caseKit';
import { leavingSets } from '../loans/leavingSets';
import { readSetting } from '../settings';
import { loadStageSpreads } from '../turns/stageTimes';

const DAY_MS = 86_400_000;
/** Others wait no longer than about this while ways are worked out. */
const TURN_MS = 25;

interface Watched {
  onProgress?: ((progress: { done: number; of: number }) => void) | undefined;
  signal?: AbortSignal | undefined;
}

/**
 * Everything that decides who gets which set from now on until the end of the horizon. Whoever plans, it is the whole store
 * that is looked at: a set that the person is to check blind is given to cases like any other, and what lies in it is not told.
 */
export async function planningFacts(
  db: Reading,
  now: string,
  { onProgress, signal }: Watched = {},
): Promise<PlanningFacts> {
  mayRead(db, 'readHospital');
  const rule = await readSetting(db.read, 'planning');
  const until = new Date(Date.parse(now) + rule.horizonDays * DAY_MS).toISOString();
  const [toServe, toGive, promises, basis] = await Promise.all([
    casesToServe(db, now, until),
    setsToGive(db, now),
    db.read.select().from(setPromises),
    kitBasis({ ...db, reader: THE_PROGRAM }, null),
  ]);
  const planning = new Set<string>(toServe.map(({ id }) => id));
  const spokenFor = new Map<string, string>();
  for (const { caseId: id, setId: set, untilAt } of promises)
    if (!planning.has(id) && untilAt > (spokenFor.get(set) ?? now)) spokenFor.set(set, untilAt);
  const planned: CaseToServe[] = [];
  let turn = performance.now();
  for (const { plan, caseDate, ...one } of toServe) {
    const ways =
      plan && waysToServe({ ...basis, construct: planFromRow(plan).construct, caseDate }, MOST_WAYS);
    planned.push({ ...one, ways });
    if (performance.now() - turn < TURN_MS) continue;
    // all is loaded: others have their turn meanwhile, and nothing they write changes what is looked at here
    onProgress?.({ done: planned.length, of: toServe.length });
    await turnOfTheLoop();
    signal?.throwIfAborted();
    turn = performance.now();
  }
  return {
    now,
    cases: planned,
    configurations: toGive.configurations,
    sets: toGive.sets.map((set) => notBefore(set, spokenFor.get(set.id), now)),
    pouches: basis.store.packs.map(({ id, quantity }) => ({ stockId: id, quantity })),
    promises: promises.map((promise) => ({
      id: promise.id,
      caseId: caseId.parse(promise.caseId),
      setId: setId.parse(promise.setId),
      chosenBy: promise.chosenBy === 'planning' ? 'planning' : 'person',
      fromAt: promise.fromAt,
      untilAt: promise.untilAt,
    })),
    rule: { planBy: rule.planBy, marginMinutes: rule.marginMinutes },
  };
}

/** What is promised to a case that has begun is to be had no sooner than that promise ends. */
function notBefore(set: SetToGive, untilAt: string | undefined, now: string): SetToGive {
  if (untilAt === undefined || set.readyMinutes === null) return set;
  const minutes = Math.ceil((Date.parse(untilAt) - Date.parse(now)) / 60_000);
  const { p50, p90 } = set.readyMinutes;
  return { ...set, readyMinutes: { p50: Math.max(p50, minutes), p90: Math.max(p90, minutes) } };
}

/** Cases to come on the list, none of whose sets has gone to theatre; each with the plan that counts. */
async function casesToServe({ read }: Reading, now: string, until: string) {
  const [inHorizon, promised] = await Promise.all([
    read
      .select({ id: cases.id })
      .from(cases)
      .where(and(gt(cases.endsAt, now), lt(cases.startsAt, until))),
    // a promise beyond the horizon holds its set all the same
    read.selectDistinct({ id: setPromises.caseId }).from(setPromises),
  ]);
  // found before by what they are found by: the cases of all the years are not gone through
  const ids = [...new Set([...inHorizon, ...promised].map(({ id }) => id))];
  const [rows, gone, { leadMinutes }] = await Promise.all([
    read
      .select({ booked: cases, plan: plans, lead: theatres.leadMinutes })
      .from(cases)
      .innerJoin(theatres, eq(theatres.id, cases.theatreId))
      .leftJoin(plans, and(eq(plans.caseId, cases.id), ne(plans.status, 'superseded')))
      .where(
        and(
          sql`${cases.id} IN (SELECT value FROM json_each(${JSON.stringify(ids)}))`,
          gt(cases.endsAt, now),
          isNull(cases.cancelledAt),
        ),
      ),
    read.select({ caseId: sets.caseId }).from(sets).where(eq(sets.step, 'inTheatre')),
    readSetting(read, 'stages'),
  ]);
  const begun = new Set(gone.map((row) => row.caseId));
  const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  rows.sort(
    ({ booked: a }, { booked: b }) => compare(a.startsAt, b.startsAt) || compare(a.reference, b.reference),
  );
  return [...groupBy(rows, ({ booked }) => booked.id)].flatMap(([id, versions]) => {
    const [first] = versions;
    if (!first || begun.has(id)) return [];
    const confirmed = versions.find(({ plan }) => plan?.status === 'confirmed');
    const { booked, lead } = first;
    return [
      {
        id: caseId.parse(id) as CaseId,
        reference: booked.reference,
        revision: booked.revision,
        theatreId: booked.theatreId,
        startsAt: booked.startsAt,
        endsAt: booked.endsAt,
        caseDate: plainDate.parse(booked.caseDate),
        leadMinutes: lead ?? leadMinutes,
        urgency: urgency.parse(booked.urgency),
        plan: (confirmed ?? first).plan,
        confirmed: confirmed !== undefined,
      },
    ];
  });
}

/** Every set in service that stays, with when it can be had and how long a turn of its kind takes. */
async function setsToGive(db: Reading, now: string): Promise<Pick<PlanningFacts, 'sets' | 'configurations'>> {
  const [rows, recent, spreadOf] = await Promise.all([
    db.read
      .select({ set: sets, configuration: configurations, caseEndsAt: cases.endsAt })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
      .leftJoin(cases, eq(cases.id, sets.caseId))
      .where(and(isNull(sets.withdrawnAt), notInArray(sets.id, leavingSets(db.read))))
      .orderBy(asc(sets.code)),
    db.read
      .select({ setId: sets.id })
      .from(sets)
      .where(
        and(
          eq(sets.step, 'onBench'),
          sql`EXISTS (SELECT 1 FROM ${counts} WHERE ${counts.setId} = ${sets.id} AND ${counts.countedAt} > ${sets.stepSince})`,
        ),
      ),
    loadStageSpreads(db),
  ]);
  const counted = new Set(recent.map((row) => row.setId));
  const kinds = new Map(rows.map(({ configuration }) => [configuration.id, configuration.name]));
  return {
    sets: rows.map(({ set, configuration, caseEndsAt }): SetToGive => {
      const onItsWay = {
        configurationId: configuration.id,
        step: turnStep.parse(set.step),
        since: set.stepSince,
        caseEndsAt,
        counted: counted.has(set.id),
      };
      const left = wayLeft(onItsWay, now, spreadOf);
      const spread = left && turnTime(left.stages, 'independently');
      return {
        id: setId.parse(set.id),
        code: set.code,
        revision: set.revision,
        configuration: configuration.name,
        readyMinutes: spread && { p50: spread.p50 + left.waitMinutes, p90: spread.p90 + left.waitMinutes },
        inStore: set.step === 'inSterileStore',
      };
    }),
    configurations: [...kinds].map(([id, name]) => ({
      id: configurationId.parse(id),
      name,
      stages: STAGES.map((stage) => {
        const { p50, p90 } = spreadOf(id, stage);
        return { stage, p50Minutes: p50, p90Minutes: p90 };
      }),
    })),
  };
}

import { and, eq, gt, isNotNull, isNull, ne, or, sql } from 'drizzle-orm';
import { configurationVersionId, type ItemId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import { turnStep } from '@/lib/sets/setState';
import type { BookedNeed } from '@/lib/turns/needs';
import { type OpenSet, type QueueLine, queueOf } from '@/lib/turns/queue';
import { mayRead, type Reading } from '../../reader';
import { cases, counts, packs, plans, sets } from '../../schema';
import { keptSetStandings } from '../keptStandings';
import { keptVersions } from '../keptVersions';
import type { SetStandings, StandingSet } from '../setStandings';
import { readSetting } from '../settings';
import { loadStageTimes } from './stageTimes';
import { loadWantedTurns } from './wantedTurns';

/** A set in the queue: what to do next with it, and how it stands. */
export interface QueuedSet {
  line: QueueLine;
  one: StandingSet;
  /** The load its pack is in. */
  loadId: string | null;
}

export interface WorkQueue {
  leadMinutes: number;
  lines: QueuedSet[];
  /** Every set in service, for the board. */
  all: QueuedSet['one'][];
  items: SetStandings['items'];
}

/** What to do next, for every open set of the hospital; tests/bench measures it. */
export async function loadWorkQueue(db: Reading, now: string): Promise<WorkQueue> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [standings, rows, recent, booked, wanted, timeOf, { leadMinutes }] = await Promise.all([
    keptSetStandings(db, now),
    // of what stands in the store for no case nothing more is asked, and most sets do
    read
      .select({
        id: sets.id,
        caseId: sets.caseId,
        caseEndsAt: cases.endsAt,
        loadId: packs.loadId,
      })
      .from(sets)
      .leftJoin(cases, eq(cases.id, sets.caseId))
      .leftJoin(packs, eq(packs.id, sets.packId))
      .where(or(ne(sets.step, 'inSterileStore'), isNotNull(sets.caseId))),
    // asked of each set at the bench: asked of the counts, all of the years would be gone through
    read
      .select({ setId: sets.id })
      .from(sets)
      .where(
        and(
          eq(sets.step, 'onBench'),
          sql`EXISTS (SELECT 1 FROM ${counts} WHERE ${counts.setId} = ${sets.id} AND ${counts.countedAt} > ${sets.stepSince})`,
        ),
      ),
    bookedNeeds(db, now),
    loadWantedTurns(db, now),
    loadStageTimes(db),
    readSetting(read, 'stages'),
  ]);
  const counted = new Set(recent.map(({ setId }) => setId));
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  const open = standings.sets.map(({ set }, rank): OpenSet => {
    const row = rowOf.get(set.id);
    return {
      id: set.id,
      code: set.code,
      configurationId: set.configuration.id,
      step: turnStep.parse(set.step),
      since: set.stepSince,
      useBy: set.useBy === null ? null : plainDate.parse(set.useBy),
      withdrawn: set.outOfService,
      promisedTo: set.promisedTo.map(({ caseId }) => caseId),
      caseId: row?.caseId ?? null,
      caseEndsAt: row?.caseEndsAt ?? null,
      counted: counted.has(set.id),
      rank,
    };
  });
  const byId = new Map<string, StandingSet>(standings.sets.map((one) => [one.set.id, one]));
  const lines = queueOf({ now, leadMinutes, sets: open, cases: booked, wanted, timeOf });
  const inService = new Set<string>(open.filter(({ withdrawn }) => !withdrawn).map(({ id }) => id));
  return {
    leadMinutes,
    lines: lines.flatMap((line) => {
      const one = byId.get(line.setId);
      return one ? [{ line, one, loadId: rowOf.get(line.setId)?.loadId ?? null }] : [];
    }),
    all: standings.sets.filter(({ set }) => inService.has(set.id)),
    items: standings.items,
  };
}

const { id, reference, startsAt, caseDate } = cases;
const BOOKED = { id, reference, startsAt, caseDate };
/** The plates a plan states, as one text: nothing else of it is asked, and reading whole plans takes longer than all the rest. */
const PLATES = sql<
  string | null
>`(SELECT json_group_array(value ->> '$.plateItemId') FROM json_each(${plans.body}, '$.plates'))`;

/** Cases still to begin, each with the kinds of set that hold a plate its plan states. */
async function bookedNeeds(db: Reading, now: string): Promise<BookedNeed[]> {
  const [rows, versions, followed] = await Promise.all([
    db.read
      .select({ booked: BOOKED, status: plans.status, plates: PLATES })
      .from(cases)
      .leftJoin(plans, and(eq(plans.caseId, cases.id), ne(plans.status, 'superseded')))
      .where(and(gt(cases.startsAt, now), isNull(cases.cancelledAt))),
    keptVersions(db),
    db.read.selectDistinct({ versionId: sets.versionId }).from(sets),
  ]);
  const kindsHolding = new Map<ItemId, Set<string>>();
  for (const { versionId } of followed) {
    const version = versions.get(configurationVersionId.parse(versionId));
    for (const { itemId } of version?.lines ?? []) {
      const kinds = kindsHolding.get(itemId) ?? new Set();
      kindsHolding.set(itemId, kinds.add(version?.configurationId ?? ''));
    }
  }
  return [...groupBy(rows, ({ booked }) => booked.id)].flatMap(([caseId, versionsOf]) => {
    const plan = versionsOf.find(({ status }) => status === 'confirmed') ?? versionsOf[0];
    if (!plan) return [];
    const stated = plan.plates === null ? [] : (JSON.parse(plan.plates) as ItemId[]);
    const { booked } = plan;
    const holdPlate = new Set(stated.flatMap((plate) => [...(kindsHolding.get(plate) ?? [])]));
    return [
      {
        caseId,
        reference: booked.reference,
        startsAt: booked.startsAt,
        caseDate: plainDate.parse(booked.caseDate),
        holdPlate,
      },
    ];
  });
}

import { and, asc, eq, gt, isNull, lt, sql } from 'drizzle-orm';
import { caseId } from '@/lib/identity/ids';
import { keptNeeds } from '@/lib/kits/keptWays';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import { type CaseInNeed, type Gap, gapsOf, type PiecesThere } from '@/lib/restock/gaps';
import type { Queries } from '../../client';
import { planFromRow } from '../../mappers/plan';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import { cases, plans } from '../../schema';
import { keptCatalogue } from '../caseKit';
import { loadFitEngine } from '../fitRules';
import { newestChange } from '../ledgerHead';
import { loadStore } from '../store';
import { hospitalToday } from '../today';
import { type CaseOrder, openOrdersOf } from './coming';

/** A gap with what is on order that could close it. */
export type GapOnScreen = Gap & { coming: CaseOrder[] };

const DAY_MS = 86_400_000;

interface GapsOnFile {
  cases: number;
  gaps: Gap[];
  needs: ReadonlyMap<string, CaseInNeed['needs']>;
}
const kept = new WeakMap<Queries, Map<number, { under: string; found: Promise<GapsOnFile> }>>();

/**
 * What booked cases of the next `days` days need that neither sets nor shelf have. It is the whole house that is looked at,
 * whoever asks; how much lies in which set is not told. Worked out once and kept until something is written that can change a
 * kit, the day ends, or a case begins or comes near; what is on order is read each time.
 */
export async function urgentGaps(
  db: Reading,
  now: string,
  days: number,
): Promise<Omit<GapsOnFile, 'gaps'> & { gaps: GapOnScreen[] }> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const until = new Date(Date.parse(now) + days * DAY_MS).toISOString();
  // what it rests on is asked before it is read: what is written in between only makes it newer than its name
  const change = await newestChange(db);
  const [coming, today, [window]] = await Promise.all([
    openOrdersOf(read),
    hospitalToday(read),
    // between two writes a case leaves at one end and comes in at the other: these three tell which are in
    read
      .select({
        text: sql<string>`count(*) || ' ' || coalesce(min(starts_at), '') || ' ' || coalesce(max(starts_at), '')`,
      })
      .from(cases)
      .where(inWindow(now, until)),
  ]);
  const under = `${change} ${today} ${window?.text}`;
  const ofStore = kept.get(read) ?? new Map<number, { under: string; found: Promise<GapsOnFile> }>();
  kept.set(read, ofStore);
  const before = ofStore.get(days);
  const found = before?.under === under && change !== null ? before.found : gapsOnFile(db, now, until);
  ofStore.set(days, { under, found });
  // what failed is tried again
  found.catch(() => ofStore.delete(days));
  const { gaps, ...rest } = await found;
  return {
    ...rest,
    gaps: gaps.map((gap) => ({
      ...gap,
      coming: gap.kind === 'piece' ? gap.accepts.flatMap((id) => coming.get(id) ?? []) : [],
    })),
  };
}

const inWindow = (now: string, until: string) =>
  and(gt(cases.startsAt, now), lt(cases.startsAt, until), isNull(cases.cancelledAt));

async function gapsOnFile(db: Reading, now: string, until: string): Promise<GapsOnFile> {
  const [booked, store, catalogue, engine] = await Promise.all([
    db.read
      .select({ booked: cases, plan: plans })
      .from(cases)
      .innerJoin(plans, and(eq(plans.caseId, cases.id), eq(plans.status, 'confirmed')))
      .where(inWindow(now, until))
      .orderBy(asc(cases.startsAt), asc(cases.reference)),
    loadStore({ ...db, reader: THE_PROGRAM }, null),
    keptCatalogue(db),
    loadFitEngine(db),
  ]);
  const current = new Set(catalogue.filter(({ status }) => status === 'current').map(({ id }) => id));
  const inSets = store.sets.filter(({ heldBecause, step }) => heldBecause === null && step !== 'held');
  const there = [
    // sets that hold the same often share one list of it
    ...[...groupBy(inSets, ({ contents }) => contents)].flatMap(([contents, alike]) =>
      contents.map(
        ({ itemId, found }): PiecesThere => ({ itemId, pieces: found * alike.length, useBy: null }),
      ),
    ),
    ...store.packs
      .filter(({ heldBecause }) => heldBecause === null)
      .map(({ itemId, quantity, useBy }): PiecesThere => ({ itemId, pieces: quantity, useBy })),
  ].filter(({ itemId, pieces }) => pieces > 0 && current.has(itemId));
  const inNeed = booked.map(
    ({ booked: one, plan }): CaseInNeed => ({
      caseId: caseId.parse(one.id),
      reference: one.reference,
      startsAt: one.startsAt,
      caseDate: plainDate.parse(one.caseDate),
      needs: keptNeeds(planFromRow(plan).construct, catalogue, engine),
    }),
  );
  return {
    cases: inNeed.length,
    gaps: gapsOf(inNeed, together(there)),
    needs: new Map(inNeed.map(({ caseId: id, needs }) => [id, needs])),
  };
}

/** One heap for each item and use-by, wherever its pieces are: the fewer there are, the sooner they are matched. */
function together(there: readonly PiecesThere[]): PiecesThere[] {
  const heaps = new Map<string, PiecesThere>();
  for (const one of there) {
    const key = `${one.itemId} ${one.useBy ?? ''}`;
    const heap = heaps.get(key);
    if (heap) heap.pieces += one.pieces;
    else heaps.set(key, { ...one });
  }
  return [...heaps.values()];
}

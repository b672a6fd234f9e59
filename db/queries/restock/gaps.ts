import { and, asc, eq, gt, isNull, lt } from 'drizzle-orm';
import { caseId } from '@/lib/identity/ids';
import { needsOf } from '@/lib/kits/needs';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import { type CaseInNeed, type Gap, gapsOf, type PiecesThere } from '@/lib/restock/gaps';
import { planFromRow } from '../../mappers/plan';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import { cases, plans } from '../../schema';
import { keptCatalogue } from '../caseKit';
import { loadFitEngine } from '../fitRules';
import { loadStore } from '../store';
import { type CaseOrder, openOrdersOf } from './coming';

/** A gap with what is on order that could close it. */
export type GapOnScreen = Gap & { coming: CaseOrder[] };

const DAY_MS = 86_400_000;

/**
 * What booked cases of the next `days` days need that neither sets nor shelf have. It is the whole house that is looked at,
 * whoever asks; how much lies in which set is not told.
 */
export async function urgentGaps(
  db: Reading,
  now: string,
  days: number,
): Promise<{ cases: number; gaps: GapOnScreen[]; needs: ReadonlyMap<string, CaseInNeed['needs']> }> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const until = new Date(Date.parse(now) + days * DAY_MS).toISOString();
  const [booked, store, catalogue, engine, coming] = await Promise.all([
    read
      .select({ booked: cases, plan: plans })
      .from(cases)
      .innerJoin(plans, and(eq(plans.caseId, cases.id), eq(plans.status, 'confirmed')))
      .where(and(gt(cases.startsAt, now), lt(cases.startsAt, until), isNull(cases.cancelledAt)))
      .orderBy(asc(cases.startsAt), asc(cases.reference)),
    loadStore({ ...db, reader: THE_PROGRAM }, null),
    keptCatalogue(db),
    loadFitEngine(db),
    openOrdersOf(read),
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
      needs: needsOf(planFromRow(plan).construct, catalogue, engine),
    }),
  );
  const gaps = gapsOf(inNeed, together(there)).map((gap) => ({
    ...gap,
    coming: gap.kind === 'piece' ? gap.accepts.flatMap((id) => coming.get(id) ?? []) : [],
  }));
  return { cases: inNeed.length, gaps, needs: new Map(inNeed.map(({ caseId: id, needs }) => [id, needs])) };
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

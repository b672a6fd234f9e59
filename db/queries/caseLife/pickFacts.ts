import { and, asc, eq, isNull, ne } from 'drizzle-orm';
import type { PackFacts } from '@/lib/caseLife/packProblems';
import type { SetPickFacts } from '@/lib/caseLife/setProblems';
import { stockId } from '@/lib/identity/ids';
import { isPastUseBy, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { stockForm } from '@/lib/stock/stock';
import type { Queries } from '../../client';
import { cases, packs, places, type sets, stock } from '../../schema';
import { promisedPouches } from '../short/decisions';
import { sendFacts } from '../turns/sendFacts';
import { type KitOnRecord, onKits } from './standing';
import type { HeapAtHand } from './thing';

/** What decides whether a set may be picked for a case, inside or outside a write. */
export async function setPickFactsOf(
  read: Queries,
  {
    set,
    booked,
    rival,
    packId,
    now,
  }: {
    set: typeof sets.$inferSelect;
    booked: typeof cases.$inferSelect;
    /** The case that has it over this one's time, by the promises. */
    rival: { reference: string; startsAt: string } | null;
    /** Of the label in the hand; `null` where none was read. */
    packId: string | null;
    now: string;
  },
): Promise<SetPickFacts> {
  const facts = await sendFacts(read, set, booked, now);
  return {
    ...facts,
    promisedTo: facts.promisedTo ?? rival,
    outOfService: set.withdrawnAt !== null,
    otherPack: packId !== null && packId !== set.packId,
  };
}

/** What decides whether single packs of a heap may go to the case of a kit, inside or outside a write. */
export async function packFactsOf(
  read: Queries,
  {
    heap,
    item,
    placeName,
    pouch,
    saidUseBy,
    kit,
    quantity,
    now,
  }: HeapAtHand & {
    kit: Pick<KitOnRecord, 'booked' | 'list'>;
    quantity: number;
    now: string;
  },
): Promise<PackFacts> {
  const [taken, travelling, others, [letOut]] = await Promise.all([
    onKits(read),
    promisedPouches(read, now),
    read
      .select({ heap: stock, placeName: places.name })
      .from(stock)
      .innerJoin(places, eq(places.id, stock.placeId))
      .where(and(eq(stock.itemId, heap.itemId), ne(stock.id, heap.id)))
      .orderBy(asc(stock.useBy), asc(stock.id)),
    read
      .select({ reference: cases.reference })
      .from(packs)
      .innerJoin(cases, eq(cases.id, packs.forCaseId))
      .where(
        and(
          eq(packs.stockId, heap.id),
          eq(packs.state, 'sterile'),
          isNull(packs.decisionId),
          ne(packs.forCaseId, kit.booked.id),
        ),
      ),
  ]);
  const freeOf = (one: typeof stock.$inferSelect) => {
    const id = stockId.parse(one.id);
    return Math.max(0, one.quantity - (taken.get(id) ?? 0) - (travelling.get(id) ?? 0));
  };
  const caseDate = plainDate.parse(kit.booked.caseDate);
  const good = others.filter(
    ({ heap: one }) =>
      one.form !== 'unsterile' &&
      one.heldBecause === null &&
      freeOf(one) > 0 &&
      (one.useBy === null || !isPastUseBy(plainDate.parse(one.useBy), caseDate)),
  );
  const listed = new Set(kit.list.map((line) => (line.kind === 'pack' ? line.stockId : '')));
  const instead = good.find(({ heap: one }) => listed.has(one.id as never)) ?? good[0];
  return {
    name: item.name,
    form: stockForm.parse(heap.form),
    status: item.status === 'recalled' ? 'recalled' : item.status === 'withdrawn' ? 'withdrawn' : 'current',
    heldBecause: heap.heldBecause,
    lot: heap.lot,
    useBy: soonest(heap.useBy, saidUseBy),
    placeName,
    letOutFor: letOut ?? null,
    pouchState: pouch?.state ?? null,
    free: freeOf(heap),
    quantity,
    instead: instead ? { lot: instead.heap.lot, placeName: instead.placeName } : null,
    case: { reference: kit.booked.reference, caseDate },
  };
}

/** The shelf's record and the pack itself say the same; where they do not, the sooner counts. */
function soonest(one: string | null, other: string | null): PlainDate | null {
  const dates = [one, other].flatMap((date) => (date === null ? [] : [plainDate.parse(date)])).sort();
  return dates[0] ?? null;
}

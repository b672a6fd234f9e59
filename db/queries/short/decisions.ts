import { and, asc, eq, isNull, or } from 'drizzle-orm';
import { itemId, type SetId, type StockId, setId, stockId } from '@/lib/identity/ids';
import { isPastUseBy, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { lapsesOf, type NamedCase, type ShortDecision, shortDecision } from '@/lib/sets/short/decision';
import type { Pouch } from '@/lib/sets/short/standIns';
import type { Queries } from '../../client';
import { cases, sets, shortDecisions, stock } from '../../schema';
import { onKits } from '../caseLife/standing';
import { onShelf } from '../shelf/onShelf';

/** A decision of a set's present turn, with its case as it is now. */
export interface PresentDecision {
  decision: ShortDecision;
  named: NamedCase | null;
}

/**
 * The decision that stands for each set in its present turn, by set: the last one made, lapsed or not. What was decided in
 * an earlier turn stands for nothing any more. Inside or outside a write.
 */
export async function presentDecisions(
  read: Queries,
  only: string | null = null,
): Promise<Map<SetId, PresentDecision>> {
  const rows = await read
    .select({ decision: shortDecisions, booked: cases })
    .from(shortDecisions)
    .innerJoin(sets, and(eq(sets.id, shortDecisions.setId), eq(sets.turnId, shortDecisions.turnId)))
    .leftJoin(cases, eq(cases.id, shortDecisions.caseId))
    .where(only === null ? undefined : eq(shortDecisions.setId, only))
    .orderBy(asc(shortDecisions.decidedAt), asc(shortDecisions.id));
  const found = new Map<SetId, PresentDecision>();
  // a decision made later takes the place of the one before
  for (const { decision, booked } of rows)
    found.set(setId.parse(decision.setId), {
      decision: decisionFromRow(decision),
      named: booked && namedCase(booked),
    });
  return found;
}

export const decisionFromRow = (row: typeof shortDecisions.$inferSelect): ShortDecision =>
  shortDecision.parse(row);

/** The case a decision was made for; `null` once it is cancelled: a decision goes with its case. */
export const namedCase = (row: typeof cases.$inferSelect): NamedCase | null =>
  row.cancelledAt === null
    ? {
        id: row.id,
        reference: row.reference,
        startsAt: row.startsAt,
        endsAt: row.endsAt,
        surgeonId: row.surgeonId,
      }
    : null;

/** Pouches that travel with other sets than this one, by stock row: they are promised, and serve nobody else. */
export async function promisedPouches(
  read: Queries,
  now: string,
  exceptSet: string | null = null,
): Promise<Map<StockId, number>> {
  const promised = new Map<StockId, number>();
  for (const [set, { decision, named }] of await presentDecisions(read)) {
    if (set === exceptSet || lapsesOf(decision, named, now).length > 0) continue;
    for (const { from } of decision.substitutes)
      if (from.kind === 'pouch') promised.set(from.stockId, (promised.get(from.stockId) ?? 0) + 1);
  }
  return promised;
}

/** Sterile pouches that may travel with a set on that day: in date, not held, and not promised to another set. */
export async function pouchesFor(read: Queries, set: string, on: PlainDate, now: string): Promise<Pouch[]> {
  const [rows, promised, kits] = await Promise.all([
    read
      .select()
      .from(stock)
      .where(
        and(or(eq(stock.form, 'pouch'), eq(stock.form, 'sterilePacked')), isNull(stock.heldBecause), onShelf),
      )
      .orderBy(asc(stock.useBy), asc(stock.id)),
    promisedPouches(read, now, set),
    onKits(read),
  ]);
  return rows.flatMap((row): Pouch[] => {
    const id = stockId.parse(row.id);
    const useBy = row.useBy === null ? null : plainDate.parse(row.useBy);
    if (useBy !== null && isPastUseBy(useBy, on)) return [];
    const quantity = row.quantity - (promised.get(id) ?? 0) - (kits.get(id) ?? 0);
    return quantity > 0 ? [{ stockId: id, itemId: itemId.parse(row.itemId), quantity, useBy }] : [];
  });
}

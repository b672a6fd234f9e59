import { and, eq, isNull, sql } from 'drizzle-orm';
import { ownerEntry } from '@/lib/consignment/entries';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { consignmentWords as words } from '@/lib/wording/consignment';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { lenders, stock, usageOrderLines, usageOrders } from '../../schema';

interface StateOwner {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/**
 * States whose the consigned pieces of one lot are: those on the shelf, those with cases, and those that were used. All heaps
 * of the lot together, for pieces were moved between them.
 */
export async function stateOwner(request: StateOwner): Promise<Outcome<{ heaps: number }>> {
  const { db, now, person } = request;
  if (!may(person, 'stateStockOwner')) return refused('notPermitted', words.mayNotState(person.name));
  const parsed = ownerEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { itemId, lot, before, lenderId, because } = parsed.data;
  const problems = textProblems(because, ['because']);
  if (problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const [lender] = await write.select().from(lenders).where(eq(lenders.id, lenderId));
    if (!lender) return refusedFor([{ path: ['lenderId'], code: 'unknown', message: words.noSuchOwner }]);
    if (lender.withdrawnAt !== null)
      return refusedFor([{ path: ['lenderId'], code: 'withdrawn', message: words.ownerOut(lender.name) }]);
    const ofLot = and(
      eq(stock.itemId, itemId),
      lot === null ? isNull(stock.lot) : eq(stock.lot, lot),
      eq(stock.owner, 'consignment'),
      before === null ? isNull(stock.lenderId) : eq(stock.lenderId, before),
    );
    if (before !== null && (await isTold(write, { itemId, lot, lenderId: before }))) {
      const [told] = await write.select({ name: lenders.name }).from(lenders).where(eq(lenders.id, before));
      return refused('frozen', words.toldAlready(told?.name ?? before));
    }
    const heaps = await write
      .update(stock)
      .set({ lenderId, revision: sql`${stock.revision} + 1` })
      .where(ofLot)
      .returning({ id: stock.id });
    if (heaps.length === 0) return refused('conflict', words.nothingOfIt);
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'state-stock-owner',
      subjectKind: 'item',
      subjectId: itemId,
      detail: { lot, before, lenderId, because, heaps: heaps.map(({ id }) => id) },
    });
    return { ok: true, value: { heaps: heaps.length } };
  });
}

/** Whether a usage order that stands has told an owner of pieces of a lot. */
async function isTold(
  write: Queries,
  of: { itemId: string; lot: string | null; lenderId: string },
): Promise<boolean> {
  const [line] = await write
    .select({ id: usageOrderLines.id })
    .from(usageOrderLines)
    .innerJoin(usageOrders, eq(usageOrders.id, usageOrderLines.orderId))
    .where(
      and(
        eq(usageOrders.lenderId, of.lenderId),
        eq(usageOrderLines.itemId, of.itemId),
        of.lot === null ? isNull(usageOrderLines.lot) : eq(usageOrderLines.lot, of.lot),
        eq(usageOrderLines.withdrawn, false),
      ),
    )
    .limit(1);
  return line !== undefined;
}

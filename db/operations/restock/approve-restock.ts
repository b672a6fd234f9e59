import { asc, desc, eq } from 'drizzle-orm';
import { type OrderId, orderId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { groupBy } from '@/lib/lists/groupBy';
import { textProblems } from '@/lib/plans/checkConstruct';
import { addDays } from '@/lib/quantities/plainDate';
import { approvalEntry } from '@/lib/restock/entries';
import { wallClock } from '@/lib/theatre/localTime';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { loadTerms } from '../../queries/restock/terms';
import { items, restockLines, restocks, supplyOrderLines, supplyOrders } from '../../schema';
import { type AtRestock, atRestock, type StandsNow } from './at-restock';

interface Ordered {
  orders: { id: OrderId; number: string; makerId: string; lines: number }[];
}

type Line = typeof restockLines.$inferSelect & { approved: number; changedBecause: string | null };

/**
 * Approves a proposal, with whatever is changed of it and why, and makes one order of it for each maker. Nothing is sent:
 * the order is handed to the maker by a person.
 */
export async function approveRestock(request: AtRestock): Promise<Outcome<Ordered, StandsNow>> {
  const parsed = approvalEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { now, newId, person } = request;
  return atRestock(request, async (write, proposal) => {
    const rows = await write
      .select({ line: restockLines, status: items.status, name: items.name })
      .from(restockLines)
      .innerJoin(items, eq(items.id, restockLines.itemId))
      .where(eq(restockLines.restockId, proposal.id))
      .orderBy(asc(items.code));
    const changed = new Map(parsed.data.changes.map((change) => [change.lineId as string, change]));
    const problems = changesAmiss(parsed.data.changes, rows);
    const lines = rows.map(({ line }): Line => {
      const change = changed.get(line.id);
      const isOther = change !== undefined && change.pieces !== line.proposed;
      return {
        ...line,
        approved: change?.pieces ?? line.proposed,
        changedBecause: isOther ? change.because : null,
      };
    });
    for (const [at, { status, name }] of rows.entries())
      if (status !== 'current' && (lines[at]?.approved ?? 0) > 0)
        problems.push({ path: ['changes'], code: 'not-current', message: words.notCurrent(name, status) });
    if (problems.length > 0) return refusedFor(problems);
    const toOrder = lines.filter(({ approved }) => approved > 0);
    if (toOrder.length === 0) return refused('invalid', words.nothingToOrder);
    for (const { id, approved, changedBecause } of lines)
      await write.update(restockLines).set({ approved, changedBecause }).where(eq(restockLines.id, id));
    await write
      .update(restocks)
      .set({ state: 'approved', decidedBy: person.id, decidedAt: now, revision: proposal.revision + 1 })
      .where(eq(restocks.id, proposal.id));
    const orders = await orderByMaker(write, toOrder, { ...request, restock: proposal.id });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'approve-restock',
      subjectKind: 'restock',
      subjectId: proposal.id,
      detail: {
        number: proposal.number,
        orders: orders.map(({ number, makerId, lines: count }) => ({ number, makerId, lines: count })),
        ordered: toOrder.map(({ itemId, approved }) => ({ itemId, pieces: approved })),
        changed: lines
          .filter(({ changedBecause }) => changedBecause !== null)
          .map(({ itemId, proposed, approved, changedBecause }) => ({
            itemId,
            proposed,
            approved,
            because: changedBecause,
          })),
      },
    });
    return { ok: true, value: { orders } };
  });

  async function orderByMaker(write: Queries, toOrder: readonly Line[], { restock }: { restock: string }) {
    const terms = await loadTerms(write);
    const today = wallClock(now).date;
    const [last] = await write.select().from(supplyOrders).orderBy(desc(supplyOrders.number)).limit(1);
    let next = Number(last?.number.slice(3) ?? 0);
    const made: Ordered['orders'] = [];
    for (const [makerId, lines] of groupBy(toOrder, (line) => line.makerId)) {
      next += 1;
      const id = orderId.parse(newId('order'));
      const number = `OR-${String(next).padStart(4, '0')}`;
      const leads = lines.map(
        ({ itemId }) => terms.ofItem.get(itemId)?.leadDays ?? terms.ofMaker.get(makerId)?.leadDays ?? null,
      );
      // all of it is expected when the slowest of it is; of one lead nobody knows, nobody knows
      const known = leads.every((days) => days !== null) ? Math.max(...leads.map((days) => days ?? 0)) : null;
      await write.insert(supplyOrders).values({
        id,
        number,
        restockId: restock,
        makerId,
        state: 'open',
        orderedBy: person.id,
        orderedAt: now,
        expectedOn: known === null ? null : addDays(today, known),
        revision: 1,
      });
      await write.insert(supplyOrderLines).values(
        lines.map(({ id: restockLineId, itemId, approved, packOf, unitPence }) => ({
          id: newId('orderLine'),
          orderId: id,
          restockLineId,
          itemId,
          ordered: approved,
          packOf,
          unitPence,
        })),
      );
      made.push({ id, number, makerId, lines: lines.length });
    }
    return made;
  }
}

function changesAmiss(
  changes: readonly { lineId: string; pieces: number; because: string }[],
  rows: readonly { line: typeof restockLines.$inferSelect }[],
): Problem[] {
  return changes.flatMap(({ lineId, pieces, because }, at): Problem[] => {
    const path = ['changes', at];
    const found = rows.find(({ line }) => line.id === lineId);
    if (!found) return [{ path: [...path, 'lineId'], code: 'unknown', message: words.noSuchLine }];
    const text = textProblems(because, [...path, 'because']);
    return pieces % found.line.packOf === 0
      ? text
      : [
          ...text,
          { path: [...path, 'pieces'], code: 'no-pack', message: words.wholePacks(found.line.packOf) },
        ];
  });
}

import { eq, sql } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { groupBy } from '@/lib/lists/groupBy';
import { isPastUseBy, type PlainDate } from '@/lib/quantities/plainDate';
import { partsEntry } from '@/lib/restock/entries';
import { wallClock } from '@/lib/theatre/localTime';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import { deliveryWords } from '@/lib/wording/stock-acts';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { lotsUnderRecall } from '../../queries/shelf/heapAt';
import { items, places, supplyOrderLines, supplyOrderParts, supplyOrders } from '../../schema';
import { putOnHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { type AtOrder, atOrder, type StandsNow } from './at-restock';

interface Received {
  revision: number;
  /** Pieces of the order that are still to come. */
  toCome: number;
}

/**
 * Puts what came of an order on the shelf, part by part, each with its own lot and use-by. An order of which all has come
 * is closed by it.
 */
export async function receiveOrder(request: AtOrder): Promise<Outcome<Received, StandsNow>> {
  const parsed = partsEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { placeId, parts } = parsed.data;
  const { now, newId, person } = request;
  return atOrder(request, async (write, order) => {
    const lines = await linesOf(write, order.id);
    const recalled = await lotsUnderRecall(
      write,
      lines.map(({ itemId }) => itemId),
    );
    const problems = [
      ...(await placeAmiss(write, placeId)),
      ...partsAmiss(parts, lines, { today: wallClock(now).date, recalled }),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const written: (typeof supplyOrderParts.$inferInsert)[] = [];
    for (const { lineId, quantity, lot, useBy, form } of parts) {
      const line = lines.find(({ id }) => id === lineId);
      if (!line) throw new Error('lines were looked up before');
      const heap = { itemId: line.itemId, form, lot, useBy, owner: 'ours' as const, lenderId: null, placeId };
      const stockId = await putOnHeap(write, { ...heap, quantity, newId });
      written.push({
        id: newId('orderPart'),
        orderLineId: lineId,
        quantity,
        lot,
        useBy,
        placeId,
        stockId,
        personId: person.id,
        doneAt: now,
        enteredAt: now,
      });
      await recordMoves(write, [
        {
          act: 'received',
          itemId: line.itemId,
          lot,
          useBy,
          quantity,
          to: { stockId },
          source: lineId,
          unitPence: line.unitPence,
          personId: person.id,
          doneAt: now,
          enteredAt: now,
        },
      ]);
    }
    await write.insert(supplyOrderParts).values(written);
    const came = parts.reduce((sum, { quantity }) => sum + quantity, 0);
    const toCome = lines.reduce((sum, { ordered, here }) => sum + ordered - here, 0) - came;
    const revision = order.revision + 1;
    const isOver = toCome === 0;
    await write
      .update(supplyOrders)
      .set({ revision, ...(isOver ? { state: 'closed', closedBy: person.id, closedAt: now } : {}) })
      .where(eq(supplyOrders.id, order.id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'receive-order',
      subjectKind: 'order',
      subjectId: order.id,
      detail: {
        number: order.number,
        placeId,
        parts: written.map(({ orderLineId, quantity, lot, useBy, stockId }) => ({
          orderLineId,
          quantity,
          lot: lot ?? null,
          useBy: useBy ?? null,
          stockId,
        })),
        toCome,
        closed: isOver,
      },
    });
    return { ok: true, value: { revision, toCome } };
  });
}

type OrderedLine = Awaited<ReturnType<typeof linesOf>>[number];

function linesOf(write: Queries, order: string) {
  return write
    .select({
      id: supplyOrderLines.id,
      itemId: supplyOrderLines.itemId,
      name: items.name,
      status: items.status,
      suppliedSterile: items.suppliedSterile,
      ordered: supplyOrderLines.ordered,
      unitPence: supplyOrderLines.unitPence,
      here: sql<number>`(SELECT coalesce(sum(part.quantity), 0) FROM ${supplyOrderParts} part WHERE part.order_line_id = ${supplyOrderLines.id})`,
    })
    .from(supplyOrderLines)
    .innerJoin(items, eq(items.id, supplyOrderLines.itemId))
    .where(eq(supplyOrderLines.orderId, order));
}

async function placeAmiss(write: Queries, id: string): Promise<Problem[]> {
  const [place] = await write.select().from(places).where(eq(places.id, id));
  return place && place.withdrawnAt === null
    ? []
    : [{ path: ['placeId'], code: 'unknown', message: words.noSuchPlace }];
}

type Part = (typeof partsEntry)['_output']['parts'][number];

function partsAmiss(
  parts: readonly Part[],
  lines: readonly OrderedLine[],
  { today, recalled }: { today: PlainDate; recalled: (itemId: string, lot: string | null) => boolean },
): Problem[] {
  const problems = parts.flatMap(({ lineId, lot, useBy, form }, at): Problem[] => {
    const line = lines.find(({ id }) => id === lineId);
    if (!line) return [{ path: ['parts', at, 'lineId'], code: 'unknown', message: words.noSuchLine }];
    const found: Problem[] = [];
    const at_ = (field: string, code: string, message: string) =>
      found.push({ path: ['parts', at, field], code, message });
    if (useBy !== null && isPastUseBy(useBy, today)) at_('useBy', 'past', words.pastUseBy(line.name, useBy));
    if (recalled(line.itemId, lot)) at_('lot', 'lot-recalled', deliveryWords.lotRecalled(line.name, lot));
    if (line.status === 'recalled') at_('lineId', 'recalled', words.recalled(line.name));
    if (line.suppliedSterile !== null && line.suppliedSterile !== (form === 'sterilePacked'))
      at_('form', 'other-form', words.otherForm(line.name, line.suppliedSterile));
    return found;
  });
  for (const [lineId, own] of groupBy(parts.entries(), ([, part]) => part.lineId)) {
    const line = lines.find(({ id }) => id === lineId);
    const came = own.reduce((sum, [, { quantity }]) => sum + quantity, 0);
    const [last] = own[own.length - 1] ?? [0];
    if (line && came > line.ordered - line.here)
      problems.push({
        path: ['parts', last, 'quantity'],
        code: 'too-many',
        message: words.moreThanOrdered(line.name, line.ordered - line.here, came),
      });
  }
  return problems;
}

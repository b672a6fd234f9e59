import { eq } from 'drizzle-orm';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { groupBy } from '@/lib/lists/groupBy';
import { isPastUseBy, type PlainDate } from '@/lib/quantities/plainDate';
import { partsEntry } from '@/lib/restock/entries';
import { lotReadAmiss } from '@/lib/stock/knownLot';
import { wallClock } from '@/lib/theatre/localTime';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import { deliveryWords } from '@/lib/wording/stock-acts';
import type { Queries } from '../../client';
import { datesOfLots, lotKey, lotsUnderRecall } from '../../queries/shelf/heapAt';
import { places } from '../../schema';
import { putOnHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { type AtOrder, atOrder, type StandsNow } from './at-restock';
import { countToOrder, type OrderedLine, orderedLines, type PartThatCame } from './order-parts';

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
    const lines = await orderedLines(write, { orderId: order.id });
    const itemIds = lines.map(({ itemId }) => itemId);
    const [recalled, useBys] = await Promise.all([
      lotsUnderRecall(write, itemIds),
      datesOfLots(write, itemIds),
    ]);
    const problems = [
      ...(await placeAmiss(write, placeId)),
      ...partsAmiss(parts, lines, { today: wallClock(now).date, recalled, useBys }),
    ];
    if (problems.length > 0) return refusedFor(problems);
    const written: PartThatCame[] = [];
    for (const { lineId, quantity, lot, useBy, form } of parts) {
      const line = lines.find(({ id }) => id === lineId);
      if (!line) throw new Error('lines were looked up before');
      const heap = { itemId: line.itemId, form, lot, useBy, owner: 'ours' as const, lenderId: null, placeId };
      const stockId = await putOnHeap(write, { ...heap, quantity, newId });
      written.push({ orderLineId: lineId, quantity, lot, useBy, placeId, stockId });
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
    const value = await countToOrder(write, { orderId: order.id, parts: written, now, newId, person });
    return { ok: true, value };
  });
}

async function placeAmiss(write: Queries, id: string): Promise<Problem[]> {
  const [place] = await write.select().from(places).where(eq(places.id, id));
  return place && place.withdrawnAt === null
    ? []
    : [{ path: ['placeId'], code: 'unknown', message: words.noSuchPlace }];
}

type Part = (typeof partsEntry)['_output']['parts'][number];

interface OnRecord {
  today: PlainDate;
  recalled: (itemId: string, lot: string | null) => boolean;
  /** Use-bys by `lotKey`. */
  useBys: ReadonlyMap<string, (PlainDate | null)[]>;
}

function partsAmiss(
  parts: readonly Part[],
  lines: readonly OrderedLine[],
  { today, recalled, useBys }: OnRecord,
): Problem[] {
  const problems = parts.flatMap((part, at): Problem[] => {
    const { lineId, lot, useBy, form } = part;
    const line = lines.find(({ id }) => id === lineId);
    if (!line) return [{ path: ['parts', at, 'lineId'], code: 'unknown', message: words.noSuchLine }];
    const found: Problem[] = [];
    const at_ = (field: string, code: string, message: string) =>
      found.push({ path: ['parts', at, field], code, message });
    if (useBy !== null && isPastUseBy(useBy, today)) at_('useBy', 'past', words.pastUseBy(line.name, useBy));
    const amiss = lotReadAmiss(part, lot === null ? [] : (useBys.get(lotKey(line.itemId, lot)) ?? []));
    if (amiss) at_('useBy', amiss.code, amiss.message);
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

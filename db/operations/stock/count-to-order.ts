import type { Problem } from '@/lib/identity/result';
import { groupBy } from '@/lib/lists/groupBy';
import { may } from '@/lib/people/permissions';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { DeliveryLine } from '@/lib/stock/delivery';
import { restockActWords as words } from '@/lib/wording/restock-acts';
import type { Person } from '../../queries/people';
import type { OrderedLine, PartThatCame } from '../restock/order-parts';

type Counted = Pick<DeliveryLine, 'itemId' | 'owner' | 'held' | 'orderLineId'> & { pieces: number };

/** What keeps lines of a delivery from being counted to the orders they name: the same that an order's own screen asks. */
export function countingProblems(
  lines: readonly Counted[],
  ordered: readonly OrderedLine[],
  person: Person,
): Problem[] {
  const problems: Problem[] = [];
  const add = (at: number, code: string, message: string) =>
    problems.push({ path: ['lines', at, 'orderLineId'], code, message });
  const toCome = new Map(ordered.map((line) => [line.id, line.ordered - line.here]));
  for (const [at, { itemId, owner, held, orderLineId, pieces }] of lines.entries()) {
    if (orderLineId === null) continue;
    const line = ordered.find(({ id }) => id === orderLineId);
    if (!may(person, 'receiveOrder')) add(at, 'not-permitted', words.mayNotReceive(person.name));
    if (line?.orderState !== 'open' || line.itemId !== itemId) {
      add(at, 'no-such-order', words.notOfThisOrder(line?.name ?? 'It'));
      continue;
    }
    if (owner !== 'ours') add(at, 'not-ours', words.notOurs);
    if (held !== null) add(at, 'held', words.heldNotCounted);
    const left = toCome.get(orderLineId) ?? 0;
    if (pieces > left) add(at, 'too-many', words.moreThanOrdered(line.name, left, pieces));
    toCome.set(orderLineId, Math.max(0, left - pieces));
  }
  return problems;
}

/** A line as it was put away. */
interface PutAway {
  orderLineId: string | null;
  count: number;
  piecesEach: number;
  lot: string | null;
  useBy: PlainDate | null;
  placeId: string;
  stockId: string;
}

/** What came of each order, by its id. */
export function partsByOrder(
  rows: readonly PutAway[],
  lineOfOrder: ReadonlyMap<string, OrderedLine>,
): Map<string, PartThatCame[]> {
  const parts = rows.flatMap(({ orderLineId, count, piecesEach, lot, useBy, placeId, stockId }) =>
    orderLineId === null ? [] : [{ orderLineId, quantity: count * piecesEach, lot, useBy, placeId, stockId }],
  );
  return groupBy(parts, ({ orderLineId }) => lineOfOrder.get(orderLineId)?.orderId ?? '');
}

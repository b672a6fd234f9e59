import type { DeliveriesFacts } from '@/lib/exchange/plans/deliveries';
import { lenderId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { stockHold } from '@/lib/stock/hold';
import { stockOwner } from '@/lib/stock/stock';
import type { Queries } from '../../client';
import { deliveries, deliveryLines } from '../../schema';

type Received = DeliveriesFacts['received'][number];

/** Deliveries as they were received, the oldest first; `references`: only those with one of these numbers. */
export async function receivedDeliveries(
  read: Queries,
  references: ReadonlySet<string> | null,
): Promise<Received[]> {
  const rows = await read.select().from(deliveries).orderBy(deliveries.receivedAt, deliveries.id);
  const asked = rows.filter(({ reference }) => references?.has(reference.trim().toLowerCase()) ?? true);
  const ids = new Set(asked.map(({ id }) => id));
  const lines = await read
    .select()
    .from(deliveryLines)
    .orderBy(deliveryLines.deliveryId, deliveryLines.lineNo);
  const byDelivery = new Map<string, Received['lines'][number][]>();
  for (const line of lines) {
    if (!ids.has(line.deliveryId)) continue;
    const own = byDelivery.get(line.deliveryId) ?? [];
    own.push({
      itemId: line.itemId as Received['lines'][number]['itemId'],
      form: line.form === 'unsterile' ? 'unsterile' : 'sterilePacked',
      lot: line.lot,
      useBy: line.useBy === null ? null : plainDate.parse(line.useBy),
      count: line.count,
      unit: line.piecesEach === 1 ? 'pieces' : 'packs',
      placeId: line.placeId as Received['lines'][number]['placeId'],
      owner: stockOwner.parse(line.owner),
      lenderId: line.lenderId === null ? null : lenderId.parse(line.lenderId),
      orderLineId: null,
      held: line.heldBecause === null ? null : stockHold.parse(line.heldBecause),
    });
    byDelivery.set(line.deliveryId, own);
  }
  return asked.map(({ id, supplier, reference, arrivedOn }) => ({
    id,
    supplier,
    reference,
    arrivedOn,
    lines: byDelivery.get(id) ?? [],
  }));
}

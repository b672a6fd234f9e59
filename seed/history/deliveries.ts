import type { ItemEntry } from '../catalogue/entry';
import type { Chance } from './chance';

const DAY = 86_400_000;

/** A lot that came once and is gone by now. */
export interface PastHeap {
  id: string;
  itemId: string;
  form: 'unsterile' | 'sterilePacked';
  lot: string;
  /** A moment; `null` where it has none. */
  useBy: number | null;
  owner: 'ours' | 'consignment';
  place: string;
  receivedAt: number;
  received: number;
}

/** Something that left a shelf: how many pieces, and when. */
export interface Leaving {
  at: number;
  quantity: number;
}

/**
 * Lots that covered what left the shelf of one item: each delivery so many packs as were ordered, its lot new; the last one
 * no more than was needed. Answers the heap of each leaving, in their order.
 */
export function deliveriesOf(
  item: ItemEntry,
  leavings: readonly Leaving[],
  form: PastHeap['form'],
  chance: Chance,
): { heaps: PastHeap[]; heapOf: PastHeap[] } {
  const heaps: PastHeap[] = [];
  const heapOf: PastHeap[] = [];
  let left = 0;
  for (const { at, quantity } of leavings) {
    let heap = heaps.at(-1);
    if (!heap || left < quantity) {
      heap = begin(item, at, form, heaps.length, chance);
      heaps.push(heap);
      left = Math.max(
        quantity,
        item.packMultiple * chance.whole(form === 'unsterile' ? 2 : 1, form === 'unsterile' ? 5 : 3),
      );
      heap.received = 0;
    }
    left -= quantity;
    // what is never taken from a lot is not delivered: a lot of the past is used up
    heap.received += quantity;
    heapOf.push(heap);
  }
  return { heaps, heapOf };
}

function begin(item: ItemEntry, at: number, form: PastHeap['form'], index: number, chance: Chance): PastHeap {
  const receivedAt = Math.floor((at - chance.whole(3, 45) * DAY) / DAY) * DAY + 10 * 3_600_000;
  const stem = item.code.replaceAll(/[^A-Z0-9]/g, '').slice(0, 8);
  const consignment = form === 'sterilePacked' && item.kind === 'plate' && chance.is(0.5);
  return {
    id: `stock_past-${item.code.toLowerCase().replaceAll(/[^0-9a-z]/g, '-')}-${form === 'unsterile' ? 'u' : 's'}${index + 1}`,
    itemId: item.id,
    form,
    lot: `${stem}-${new Date(receivedAt).getUTCFullYear() % 100}${String(chance.whole(100, 999))}${index}`,
    useBy: form === 'sterilePacked' ? at + chance.whole(400, 1_500) * DAY : null,
    owner: consignment ? 'consignment' : 'ours',
    place:
      form === 'unsterile'
        ? 'place_general-stores'
        : consignment
          ? 'place_consignment'
          : 'place_implant-cupboard',
    receivedAt,
    received: 0,
  };
}

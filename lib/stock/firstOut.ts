import { isPastUseBy, type PlainDate } from '../quantities/plainDate';

/** What the order of taking goes by. */
export interface Lying {
  stockId: string;
  useBy: PlainDate | null;
  /** Walk to its place, in metres. */
  metres: number;
}

/**
 * First expired, first out: the earliest use-by first, one with none stated last; of the same use-by the nearest, then by id,
 * so that everybody is sent to the same heap.
 */
export function firstOut(a: Lying, b: Lying): number {
  if (a.useBy !== b.useBy) {
    if (a.useBy === null) return 1;
    if (b.useBy === null) return -1;
    return a.useBy < b.useBy ? -1 : 1;
  }
  return a.metres - b.metres || (a.stockId < b.stockId ? -1 : a.stockId > b.stockId ? 1 : 0);
}

/** Why a heap is not taken from. */
export type NotTaken = 'held' | 'pastUseBy' | 'notCurrent' | 'noneFree';

export interface HeapFacts extends Lying {
  /** All that is on record there. */
  quantity: number;
  /** Of it, what lies with kits and what travels with sets: nobody else's. */
  onKits: number;
  travelling: number;
  heldBecause: string | null;
  status: 'current' | 'withdrawn' | 'recalled';
}

/** Pieces that lie there and are nobody's yet. */
export const freeOf = ({ quantity, onKits, travelling }: HeapFacts): number =>
  Math.max(0, quantity - onKits - travelling);

/** The first reason not to take from a heap for that day; `null`: it may be taken from. */
export function notTaken(heap: HeapFacts, on: PlainDate): NotTaken | null {
  if (heap.status !== 'current') return 'notCurrent';
  if (heap.heldBecause !== null) return 'held';
  if (heap.useBy !== null && isPastUseBy(heap.useBy, on)) return 'pastUseBy';
  return freeOf(heap) === 0 ? 'noneFree' : null;
}

/** Heaps of one item with the place each has in the order of taking on that day; `null` where it is not taken from. */
export function inOrder<H extends HeapFacts>(
  heaps: readonly H[],
  on: PlainDate,
): { heap: H; turn: number | null; because: NotTaken | null }[] {
  let turn = 0;
  return [...heaps]
    .sort(firstOut)
    .map((heap) => {
      const because = notTaken(heap, on);
      if (because === null) turn += 1;
      return { heap, turn: because === null ? turn : null, because };
    })
    .sort((a, b) => Number(a.turn === null) - Number(b.turn === null));
}

import { groupBy } from '@/lib/lists/groupBy';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { freeOf, type HeapFacts, inOrder, type NotTaken } from '@/lib/stock/firstOut';
import { type StockForm, stockForm, stockOwner } from '@/lib/stock/stock';

/** One heap as the shelf shows it. */
export interface ShelfLotRow {
  id: string;
  revision: number;
  itemId: string;
  code: string;
  name: string;
  maker: string;
  status: 'current' | 'withdrawn' | 'recalled';
  form: StockForm;
  lot: string | null;
  useBy: PlainDate | null;
  owner: 'ours' | 'consignment';
  /** Whose it is, where it is on consignment; `null`: ours, or nobody has stated it. */
  lender: string | null;
  placeId: string;
  place: string;
  heldBecause: string | null;
  /** `null` where the reader counts it now, without seeing the record. */
  pieces: { all: number; free: number; onKits: number; travelling: number } | null;
  /** Its place in the order of taking for a case today, the first is 1; `null`: not taken from, and why. */
  turn: number | null;
  because: NotTaken | null;
  /** Numbers of the labelled pouches in it; none where the reader counts it now, as they could be counted too. */
  labels: string[];
}

export type ItemCells = [id: string, code: string, name: string, status: string, maker: string];
export type HeapCells = [
  id: string,
  revision: number,
  form: string,
  lot: string | null,
  useBy: string | null,
  quantity: number,
  owner: string,
  lenderId: string | null,
  placeId: string,
  heldBecause: string | null,
];
/** What is told of few heaps beside their rows. */
export interface Beside {
  stockId: string;
  onKits: number;
  travelling: number;
  /** The reader counts it now. */
  isHidden: boolean;
  labels: string[];
}
/** What heaps name, and the day. */
export interface ShelfGround {
  today: PlainDate;
  places: ReadonlyMap<string, { name: string; metres: number }>;
  lenders: ReadonlyMap<string, string>;
}

/** The heaps of one item in the order of taking on that day. */
export function rowsOfItem(
  [itemId, code, name, given, maker]: ItemCells,
  cells: readonly HeapCells[],
  beside: readonly Beside[],
  { today, places, lenders }: ShelfGround,
): ShelfLotRow[] {
  const status = given === 'recalled' || given === 'withdrawn' ? given : 'current';
  const besideOf = groupBy(beside, ({ stockId }) => stockId);
  const heaps = cells.flatMap((heap) => {
    const [stockId, , , , useBy, quantity, , , placeId, heldBecause] = heap;
    const place = places.get(placeId);
    if (!place) return [];
    const [told] = besideOf.get(stockId) ?? [];
    const facts: HeapFacts = {
      stockId,
      useBy: useBy === null ? null : plainDate.parse(useBy),
      metres: place.metres,
      quantity,
      onKits: told?.onKits ?? 0,
      travelling: told?.travelling ?? 0,
      heldBecause,
      status,
    };
    return { ...facts, heap, told, place };
  });
  return inOrder(heaps, today).map(({ heap: one, turn, because }): ShelfLotRow => {
    const [id, revision, form, lot, , quantity, owner, lenderId, placeId, heldBecause] = one.heap;
    return {
      id,
      revision,
      itemId,
      code,
      name,
      maker,
      status,
      form: stockForm.parse(form),
      lot,
      useBy: one.useBy,
      owner: stockOwner.parse(owner),
      lender: lenderId === null ? null : (lenders.get(lenderId) ?? lenderId),
      placeId,
      place: one.place.name,
      heldBecause,
      pieces: one.told?.isHidden
        ? null
        : { all: quantity, free: freeOf(one), onKits: one.onKits, travelling: one.travelling },
      turn,
      because,
      labels: quantity === 0 || one.told?.isHidden ? [] : (one.told?.labels ?? []),
    };
  });
}

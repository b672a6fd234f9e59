import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { casePicks, caseReturns, stock } from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import type { ItemEntry } from '../catalogue/entry';
import { localDate } from '../hospitalClock';
import type { Chance } from './chance';
import { deliveriesOf, type PastHeap } from './deliveries';
import type { History } from './history';
import type { Row } from './pastRows';
import type { SingleUse, SlotMove } from './pastUse';

const MINUTE = 60_000;
const DAY = 86_400_000;
const TECHNICIANS = ['person_wren-adeyemi', 'person_tomas-birkett', 'person_jolene-stott'] as const;
const SCRUBS = ['person_ruth-okonjo', 'person_piotr-lennard'] as const;
const KEEPERS = ['person_dilys-harrow', 'person_kofi-brandreth'] as const;
const iso = (ms: number) => new Date(ms).toISOString();

/** Rows of what moved in slots, each refill from a lot that came before it; answers those lots. */
export function refillRows(
  rows: Row[],
  moves: readonly SlotMove[],
  items: ReadonlyMap<string, ItemEntry>,
  chance: Chance,
): PastHeap[] {
  const heaps: PastHeap[] = [];
  for (const [itemId, own] of groupBy(moves, (move) => move.itemId)) {
    const item = items.get(itemId);
    if (!item) throw new Error(`${itemId} moved and is not in the catalogue`);
    const refills = own.filter(({ kind }) => kind === 'refilled');
    const came = deliveriesOf(item, refills, 'unsterile', chance);
    heaps.push(...came.heaps);
    rows.push(...received(came.heaps, chance));
    const heapOf = new Map(refills.map((refill, at) => [refill, came.heapOf[at]]));
    for (const move of own) {
      const heap = heapOf.get(move);
      const base = { at: move.at, act: move.kind, itemId, quantity: move.quantity };
      if (heap)
        rows.push({
          ...base,
          lot: heap.lot,
          owner: heap.owner,
          fromStockId: heap.id,
          toSetId: move.setId,
          toLineId: move.lineId,
          personId: chance.of(TECHNICIANS),
        });
      else
        rows.push({
          ...base,
          fromSetId: move.setId,
          fromLineId: move.lineId,
          caseId: move.caseId,
          packId: move.packId,
          reason: move.reason,
          personId: chance.of(move.kind === 'implanted' || move.kind === 'wasted' ? SCRUBS : TECHNICIANS),
        });
    }
  }
  return heaps;
}

const received = (heaps: readonly PastHeap[], chance: Chance): Row[] =>
  heaps.map((heap) => ({
    at: heap.receivedAt,
    act: 'received',
    itemId: heap.itemId,
    quantity: heap.received,
    lot: heap.lot,
    useBy: heap.useBy === null ? null : localDate(new Date(heap.useBy)),
    owner: heap.owner,
    toStockId: heap.id,
    personId: chance.of(KEEPERS),
  }));

/** What single packs come back unopened of those that were fetched, and what of that is past its use-by in the end. */
const FETCHED_FOR_NOTHING = 0.28;

/** Picks, returns and rows of what came in single packs, with the lots it came in. */
export async function singleRows(
  write: Queries,
  rows: Row[],
  singles: readonly SingleUse[],
  items: ReadonlyMap<string, ItemEntry>,
  { chance }: History,
): Promise<void> {
  const heaps: PastHeap[] = [];
  const picks: (typeof casePicks.$inferInsert)[] = [];
  const returns: (typeof caseReturns.$inferInsert)[] = [];
  for (const [itemId, uses] of groupBy(singles, (use) => use.itemId)) {
    const item = items.get(itemId);
    if (!item) throw new Error(`${itemId} was used and is not in the catalogue`);
    const fetched = uses.flatMap((use): SingleUse[] =>
      chance.is(FETCHED_FOR_NOTHING) ? [use, { ...use, outcome: 'cameBack', reason: null }] : [use],
    );
    const came = deliveriesOf(
      item,
      fetched.map(({ at }) => ({ at, quantity: 1 })),
      'sterilePacked',
      chance,
    );
    heaps.push(...came.heaps);
    rows.push(...received(came.heaps, chance));
    fetched.forEach((use, index) => {
      const heap = came.heapOf[index];
      if (!heap) throw new Error('every use has a lot');
      const pickId = `pick_past-${use.case.id.slice('case_'.length)}-${picks.length}`;
      const useBy = heap.useBy === null ? null : localDate(new Date(heap.useBy));
      const picked = use.case.startsAt - 40 * MINUTE;
      const [picker, scrub] = [chance.of(TECHNICIANS), chance.of(SCRUBS)];
      picks.push({
        id: pickId,
        caseId: use.case.id,
        stockId: heap.id,
        itemId,
        lot: heap.lot,
        useBy,
        quantity: 1,
        how: 'scan',
        pickedBy: picker,
        doneAt: iso(picked),
        enteredAt: iso(picked),
        issuedBy: picker,
        issuedAt: iso(picked + 10 * MINUTE),
      });
      const back = use.outcome === 'cameBack';
      const at = back ? use.case.endsAt + 15 * MINUTE : use.at;
      returns.push({
        id: `return_${pickId.slice('pick_'.length)}`,
        pickId,
        outcome: back ? 'returnedUnopened' : 'opened',
        quantity: 1,
        attested: back ? { meaning: 'iLookedAtTheBarrier', method: 'pin', at: iso(at) } : null,
        personId: scrub,
        doneAt: iso(at),
        enteredAt: iso(at),
      });
      const what = {
        itemId,
        quantity: 1,
        lot: heap.lot,
        useBy,
        owner: heap.owner,
        caseId: use.case.id,
        pickId,
      };
      rows.push({ ...what, at: picked + 10 * MINUTE, act: 'issued', fromStockId: heap.id, personId: picker });
      rows.push({
        ...what,
        at,
        act: use.outcome,
        reason: use.reason,
        ...(back ? { toStockId: heap.id } : {}),
        personId: scrub,
      });
      // nobody needed it before its use-by, or it went back to its owner
      if (back)
        rows.push({
          ...what,
          caseId: null,
          pickId: null,
          at: at + chance.whole(2, 9) * DAY,
          act: heap.owner === 'consignment' ? 'sentBack' : 'wasted',
          reason: heap.owner === 'consignment' ? null : 'packDamaged',
          fromStockId: heap.id,
          personId: chance.of(KEEPERS),
        });
    });
  }
  await insertHeapRows(write, heaps);
  await insertMany(write, casePicks, picks);
  await insertMany(write, caseReturns, returns);
}

/** Lots of the past: nothing of them is left. */
export async function insertHeapRows(write: Queries, heaps: readonly PastHeap[]): Promise<void> {
  await insertMany(
    write,
    stock,
    heaps.map((heap) => ({
      id: heap.id,
      itemId: heap.itemId,
      form: heap.form,
      lot: heap.lot,
      useBy: heap.useBy === null ? null : localDate(new Date(heap.useBy)),
      quantity: 0,
      owner: heap.owner,
      placeId: heap.place,
      revision: 1,
    })),
  );
}

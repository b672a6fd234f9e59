import type { Queries } from '@/db/client';
import { groupBy } from '@/lib/lists/groupBy';
import type { ItemEntry } from '../catalogue/entry';
import { localDate } from '../hospitalClock';
import type { Chance } from './chance';
import { deliveriesOf, type PastHeap } from './deliveries';
import type { History } from './history';
import { insertRows } from './insertRows';
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
      const slot = { setId: move.setId, lineId: move.lineId };
      const heap = heapOf.get(move);
      const base = { at: move.at, act: move.kind, itemId, quantity: move.quantity };
      if (heap)
        rows.push({
          ...base,
          lot: heap.lot,
          owner: heap.owner,
          fromStock: heap.id,
          toSlot: slot,
          by: chance.of(TECHNICIANS),
        });
      else
        rows.push({
          ...base,
          fromSlot: slot,
          caseId: move.caseId,
          packId: move.packId,
          reason: move.reason,
          by: chance.of(move.kind === 'implanted' || move.kind === 'wasted' ? SCRUBS : TECHNICIANS),
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
    toStock: heap.id,
    by: chance.of(KEEPERS),
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
  const picks: (string | number | null)[][] = [];
  const returns: (string | number | null)[][] = [];
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
      picks.push([
        ...[
          pickId,
          use.case.id,
          heap.id,
          itemId,
          heap.lot,
          useBy,
          1,
          'scan',
          picker,
          iso(picked),
          iso(picked),
          picker,
        ],
        iso(picked + 10 * MINUTE),
      ]);
      const back = use.outcome === 'cameBack';
      const at = back ? use.case.endsAt + 15 * MINUTE : use.at;
      const attested = back
        ? JSON.stringify({ meaning: 'iLookedAtTheBarrier', method: 'pin', at: iso(at) })
        : null;
      const outcome = back ? 'returnedUnopened' : 'opened';
      returns.push([
        `return_${pickId.slice('pick_'.length)}`,
        pickId,
        outcome,
        1,
        attested,
        scrub,
        iso(at),
        iso(at),
      ]);
      const what = {
        itemId,
        quantity: 1,
        lot: heap.lot,
        useBy,
        owner: heap.owner,
        caseId: use.case.id,
        pickId,
      };
      rows.push({ ...what, at: picked + 10 * MINUTE, act: 'issued', fromStock: heap.id, by: picker });
      rows.push({
        ...what,
        at,
        act: use.outcome,
        reason: use.reason,
        ...(back ? { toStock: heap.id } : {}),
        by: scrub,
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
          fromStock: heap.id,
          by: chance.of(KEEPERS),
        });
    });
  }
  await insertHeapRows(write, heaps);
  await insertRows(
    write,
    'case_picks',
    [
      ...['id', 'case_id', 'stock_id', 'item_id', 'lot', 'use_by', 'quantity', 'how', 'picked_by', 'done_at'],
      ...['entered_at', 'issued_by', 'issued_at'],
    ],
    picks,
  );
  await insertRows(
    write,
    'case_returns',
    ['id', 'pick_id', 'outcome', 'quantity', 'attested', 'person_id', 'done_at', 'entered_at'],
    returns,
  );
}

/** Lots of the past: nothing of them is left. */
export async function insertHeapRows(write: Queries, heaps: readonly PastHeap[]): Promise<void> {
  await insertRows(
    write,
    'stock',
    ['id', 'item_id', 'form', 'lot', 'use_by', 'quantity', 'owner', 'place_id', 'revision'],
    heaps.map((heap) => [
      ...[heap.id, heap.itemId, heap.form, heap.lot],
      heap.useBy === null ? null : localDate(new Date(heap.useBy)),
      ...[0, heap.owner, heap.place, 1],
    ]),
  );
}

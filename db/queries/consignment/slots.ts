import { sql } from 'drizzle-orm';
import { type SlotMoveOfOwner, type SlotShares, slotShares, type Whose } from '@/lib/consignment/slotShare';
import type { OwnedMove } from '@/lib/consignment/waiting';
import type { Queries } from '../../client';
import { slotWindow } from '../trace/slotWindow';

/** A slot into which pieces of an owner were put, and what of it was theirs. */
export interface SlotOfOwner {
  setId: string;
  itemId: string;
  shares: SlotShares;
  /** The moves that were certainly theirs. */
  owned: OwnedMove[];
}

interface Told {
  seq: number;
  reason: string | null;
  useBy: string | null;
  doneOn: string;
  fromOwner: string | null;
  fromLender: string | null;
  toLender: string | null;
  charged: number;
}

/** Every slot an owner's pieces went into, with the bounds of what of it was theirs. */
export function slotsOfOwner(read: Queries, lenderId: string): SlotOfOwner[] {
  const slots = read.all<{ setId: string; itemId: string; first: string }>(sql`
    SELECT move.to_set_id AS setId, move.item_id AS itemId, min(move.done_at) AS first
    FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_off_heap ON move.from_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND move.act = 'refilled' GROUP BY 1, 2`);
  return slots.map(({ setId, itemId, first }) => {
    const window = slotWindow(read, setId, itemId, first);
    const told = new Map(toldOf(read, setId, itemId).map((one) => [one.seq, one]));
    const ownerOfLot = ownersOfLots(read, itemId, lenderId);
    const moves = window.map((move): SlotMoveOfOwner => {
      const one = told.get(move.seq);
      return { ...move, reason: one?.reason ?? null, whose: whoseOf(move, one, lenderId, ownerOfLot) };
    });
    const shares = slotShares(moves, firstHere(read, itemId, lenderId));
    const certain = new Map(shares.certain.map((one) => [one.seq, one.knownBy]));
    const owned = moves.flatMap((move): OwnedMove[] => {
      const knownBy = certain.get(move.seq);
      const one = told.get(move.seq);
      if (!knownBy || !one) return [];
      const { seq, act, reason, lot, quantity: pieces, caseId } = move;
      const facts = { seq, act, reason, itemId, lot, useBy: one.useBy, pieces, caseId, doneOn: one.doneOn };
      return [{ ...facts, knownBy, takenBack: false, charged: one.charged === 1, creditedAlready: false }];
    });
    const charged = new Set([...told.values()].flatMap((one) => (one.charged === 1 ? [one.seq] : [])));
    const uncertain = shares.uncertain.filter(({ moves: of }) => of.some((seq) => !charged.has(seq)));
    return { setId, itemId, owned, shares: { ...shares, uncertain } };
  });
}

const toldOf = (read: Queries, setId: string, itemId: string) =>
  read.all<Told>(sql`
    SELECT move.seq, move.reason, move.use_by AS useBy, move.done_on AS doneOn, source.owner AS fromOwner,
      source.lender_id AS fromLender, home.lender_id AS toLender,
      EXISTS (SELECT 1 FROM usage_order_lines line WHERE line.move_seq = move.seq AND line.way = 'used' AND line.withdrawn = 0)
        AS charged
    FROM (
      SELECT * FROM piece_moves INDEXED BY piece_moves_into_slot WHERE to_set_id = ${setId} AND item_id = ${itemId}
      UNION ALL
      SELECT * FROM piece_moves INDEXED BY piece_moves_out_of_slot WHERE from_set_id = ${setId} AND item_id = ${itemId}
    ) move
    LEFT JOIN stock source ON source.id = move.from_stock_id LEFT JOIN stock home ON home.id = move.to_stock_id`);

/** Whose the pieces of each lot of an item are, by the heaps of it there ever were. */
function ownersOfLots(read: Queries, itemId: string, lenderId: string): Map<string, Whose> {
  const rows = read.all<{ lot: string; theirs: number; unstated: number; all: number }>(sql`
    SELECT lot, sum(lender_id IS ${lenderId}) AS theirs, sum(owner = 'consignment' AND lender_id IS NULL) AS unstated,
      count(*) AS "all"
    FROM stock WHERE item_id = ${itemId} AND lot IS NOT NULL GROUP BY lot`);
  return new Map(
    rows.map(({ lot, theirs, unstated, all }): [string, Whose] => [
      lot,
      theirs === all ? 'theirs' : theirs === 0 && unstated === 0 ? 'others' : null,
    ]),
  );
}

function whoseOf(
  { way, lot }: { way: 'in' | 'out'; lot: string | null },
  told: Told | undefined,
  lenderId: string,
  ownerOfLot: ReadonlyMap<string, Whose>,
): Whose {
  if (told?.toLender === lenderId) return 'theirs';
  if (way === 'in') {
    // found, or fetched from elsewhere: nobody knows whose
    if (!told || told.fromOwner === null) return null;
    if (told.fromLender === lenderId) return 'theirs';
    return told.fromOwner === 'consignment' && told.fromLender === null ? null : 'others';
  }
  return lot === null ? null : (ownerOfLot.get(lot) ?? null);
}

/** When the first piece of an item of the owner's came; before it nothing of the item was theirs. */
function firstHere(read: Queries, itemId: string, lenderId: string): number | null {
  const [row] = read.all<{ at: string | null }>(sql`
    SELECT min(move.done_at) AS at FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_onto_heap ON move.to_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND heap.item_id = ${itemId}`);
  return row?.at ? Date.parse(row.at) : null;
}

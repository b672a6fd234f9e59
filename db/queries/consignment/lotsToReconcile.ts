import { sql } from 'drizzle-orm';
import type { ListedLot } from '@/lib/consignment/ownersList';
import type { LotToReconcile } from '@/lib/consignment/reconcile';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import type { Queries } from '../../client';
import { accountsOfOwner } from './ownedMoves';
import { usageOfOwner } from './usageOfOwner';

interface ToldLine {
  itemId: string;
  lot: string | null;
  pieces: number;
  way: 'used' | 'takenBack';
  sentAt: string | null;
  knownBy: string;
}

/** Our record of an owner's lots as it stands, beside what a list says of them. */
export function lotsToReconcile(
  read: Queries,
  lenderId: string,
  { listed, listedOn }: { listed: readonly ListedLot[]; listedOn: PlainDate },
): LotToReconcile[] {
  const lots = new Map<string, LotToReconcile>();
  const of = (itemId: string, lot: string | null): LotToReconcile => {
    const key = JSON.stringify([itemId, lot]);
    const known = lots.get(key);
    if (known) return known;
    const here = { onShelf: 0, withCases: 0, inSlots: 0 };
    const explained = {
      usedNotTold: 0,
      orderNotSent: 0,
      orderSentLater: 0,
      sentBackLater: 0,
      receivedLater: 0,
    };
    const made = { itemId, lot, listed: null, ...here, ...explained };
    lots.set(key, made);
    return made;
  };
  for (const { itemId, lot, onShelf, withCases, intoSlots } of accountsOfOwner(read, lenderId))
    Object.assign(of(itemId, lot), { onShelf, withCases, inSlots: intoSlots });
  for (const { itemId, lot, pieces } of listed) of(itemId, lot).listed = pieces;
  for (const { itemId, lot, pieces, way, knownBy } of usageOfOwner(read, lenderId).waiting) {
    const one = of(itemId, lot);
    one.usedNotTold += way === 'used' ? pieces : -pieces;
    // its lot was read as it left the slot
    if (knownBy !== 'heap' && way === 'used') one.inSlots -= pieces;
  }
  for (const { itemId, lot, pieces, way, sentAt, knownBy } of toldLines(read, lenderId)) {
    const one = of(itemId, lot);
    const signed = way === 'used' ? pieces : -pieces;
    if (knownBy !== 'heap') one.inSlots -= signed;
    if (sentAt === null) one.orderNotSent += signed;
    else if (wallClock(sentAt).date > listedOn) one.orderSentLater += signed;
  }
  for (const { itemId, lot, act, pieces } of movedLater(read, lenderId, listedOn))
    of(itemId, lot)[act === 'received' ? 'receivedLater' : 'sentBackLater'] += pieces;
  // pieces whose lot nobody read left some slot: of no lot can less than none lie there
  for (const one of lots.values()) one.inSlots = Math.max(0, one.inSlots);
  return [...lots.values()];
}

const toldLines = (read: Queries, lenderId: string) =>
  read.all<ToldLine>(sql`
    SELECT line.item_id AS itemId, line.lot, line.pieces, line.way, o.sent_at AS sentAt, line.known_by AS knownBy
    FROM usage_orders o JOIN usage_order_lines line ON line.order_id = o.id
    WHERE o.lender_id = ${lenderId} AND line.withdrawn = 0`);

/** What came and what went back after a day, by lot. */
const movedLater = (read: Queries, lenderId: string, day: PlainDate) =>
  read.all<{ itemId: string; lot: string | null; act: 'received' | 'sentBack'; pieces: number }>(sql`
    SELECT heap.item_id AS itemId, heap.lot, move.act, sum(move.quantity) AS pieces
    FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_onto_heap ON move.to_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND move.act = 'received' AND move.done_on > ${day} AND move.reason IS NOT 'enteredWrongly'
    GROUP BY 1, 2
    UNION ALL
    SELECT heap.item_id, heap.lot, move.act, sum(move.quantity)
    FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_off_heap ON move.from_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND move.act = 'sentBack' AND move.done_on > ${day} AND move.reason IS NOT 'enteredWrongly'
    GROUP BY 1, 2`);

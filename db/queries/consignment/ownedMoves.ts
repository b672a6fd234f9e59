import { sql } from 'drizzle-orm';
import { z } from 'zod';
import { type LotAccount, lotAccounts, type MovedPieces } from '@/lib/consignment/account';
import type { OwnedMove } from '@/lib/consignment/waiting';
import { moveAct } from '@/lib/pieces/move';
import type { Queries } from '../../client';

const ownedRow = z.object({
  seq: z.number(),
  act: moveAct,
  reason: z.string().nullable(),
  itemId: z.string(),
  lot: z.string().nullable(),
  useBy: z.string().nullable(),
  pieces: z.number(),
  caseId: z.string().nullable(),
  doneOn: z.string(),
  takenBack: z.number().transform(Boolean),
  charged: z.number().transform(Boolean),
  creditedAlready: z.number().transform(Boolean),
});

/** What usage orders that stand have of a move, and whether a corrected record of use took it back. */
const TOLD = sql`
  EXISTS (SELECT 1 FROM moves_taken_back back WHERE back.move_seq = move.seq) AS takenBack,
  EXISTS (SELECT 1 FROM usage_order_lines line WHERE line.move_seq = move.seq AND line.way = 'used' AND line.withdrawn = 0) AS charged,
  EXISTS (SELECT 1 FROM usage_order_lines line WHERE line.move_seq = move.seq AND line.way = 'takenBack' AND line.withdrawn = 0)
    AS creditedAlready`;

/**
 * Everything that became of an owner's pieces on the shelf and in cases, taken back or not. Whose a piece is follows from its
 * heap: the one it left, or the one it was picked from.
 */
export function movesOfHeaps(read: Queries, lenderId: string): OwnedMove[] {
  const rows = read.all(sql`
    SELECT move.seq, move.act, move.reason, move.item_id AS itemId, move.lot, move.use_by AS useBy, move.quantity AS pieces,
      move.case_id AS caseId, move.done_on AS doneOn, ${TOLD}
    FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_off_heap ON move.from_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND move.act IN ('wasted', 'notFound')
    UNION ALL
    SELECT move.seq, move.act, move.reason, move.item_id, move.lot, move.use_by, move.quantity, move.case_id, move.done_on, ${TOLD}
    FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_onto_heap ON move.to_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND move.act = 'found'
    UNION ALL
    SELECT move.seq, move.act, move.reason, move.item_id, move.lot, move.use_by, move.quantity, move.case_id, move.done_on, ${TOLD}
    FROM stock heap JOIN case_picks pick INDEXED BY case_picks_by_heap ON pick.stock_id = heap.id
      JOIN piece_moves move INDEXED BY piece_moves_by_case ON move.case_id = pick.case_id AND move.pick_id = pick.id
    WHERE heap.lender_id = ${lenderId} AND move.act IN ('implanted', 'wasted', 'notFound')`);
  return z
    .array(ownedRow)
    .parse(rows)
    .map((row) => ({ ...row, knownBy: 'heap' as const }));
}

/** Moves out of slots that an order charged and a corrected record of use took back since. */
export function slotMovesTakenBack(read: Queries, lenderId: string): OwnedMove[] {
  const rows = read.all(sql`
    SELECT move.seq, move.act, move.reason, move.item_id AS itemId, line.lot, line.use_by AS useBy, line.pieces,
      move.case_id AS caseId, move.done_on AS doneOn, 1 AS takenBack, 1 AS charged,
      EXISTS (SELECT 1 FROM usage_order_lines credit WHERE credit.move_seq = move.seq AND credit.way = 'takenBack'
        AND credit.withdrawn = 0) AS creditedAlready, line.known_by AS knownBy
    FROM usage_orders o JOIN usage_order_lines line ON line.order_id = o.id
      JOIN moves_taken_back back ON back.move_seq = line.move_seq JOIN piece_moves move ON move.seq = line.move_seq
    WHERE o.lender_id = ${lenderId} AND line.way = 'used' AND line.withdrawn = 0 AND move.from_set_id IS NOT NULL`);
  return z.array(ownedRow.extend({ knownBy: z.enum(['heap', 'lotRead', 'othersTooFew']) })).parse(rows);
}

/** The account of each lot of an owner's, over the whole record. */
export function accountsOfOwner(read: Queries, lenderId: string): LotAccount[] {
  const stands = sql`NOT EXISTS (SELECT 1 FROM moves_taken_back back WHERE back.move_seq = move.seq)`;
  const moved = read.all<MovedPieces>(sql`
    SELECT heap.item_id AS itemId, heap.lot, move.act, 'off' AS way, move.reason IS 'enteredWrongly' AS enteredWrongly,
      sum(move.quantity) AS pieces
    FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_off_heap ON move.from_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND ${stands} GROUP BY 1, 2, 3, 5
    UNION ALL
    SELECT heap.item_id, heap.lot, move.act, iif(move.act = 'cameBack', 'outOfCase', 'onto'), 0, sum(move.quantity)
    FROM stock heap JOIN piece_moves move INDEXED BY piece_moves_onto_heap ON move.to_stock_id = heap.id
    WHERE heap.lender_id = ${lenderId} AND move.act <> 'moved' AND ${stands} GROUP BY 1, 2, 3
    UNION ALL
    SELECT heap.item_id, heap.lot, move.act, 'outOfCase', 0, sum(move.quantity)
    FROM stock heap JOIN case_picks pick INDEXED BY case_picks_by_heap ON pick.stock_id = heap.id
      JOIN piece_moves move INDEXED BY piece_moves_by_case ON move.case_id = pick.case_id AND move.pick_id = pick.id
    WHERE heap.lender_id = ${lenderId} AND move.act IN ('implanted', 'wasted', 'notFound') AND ${stands} GROUP BY 1, 2, 3`);
  const shelf = read.all<{ itemId: string; lot: string | null; pieces: number }>(sql`
    SELECT item_id AS itemId, lot, sum(quantity) AS pieces FROM stock WHERE lender_id = ${lenderId} GROUP BY 1, 2`);
  return lotAccounts(moved, shelf);
}

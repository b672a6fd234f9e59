import { type SQL, sql } from 'drizzle-orm';
import { z } from 'zod';
import { moveAct } from '@/lib/pieces/move';
import type { LotFacts, LotMove } from '@/lib/trace/lotTrace';
import type { Queries } from '../../client';
import { slotWindow } from './slotWindow';
import { STANDS } from './standing';

const row = z.object({
  seq: z.number(),
  act: moveAct,
  quantity: z.number(),
  fromStockId: z.string().nullable(),
  fromSetId: z.string().nullable(),
  toStockId: z.string().nullable(),
  toSetId: z.string().nullable(),
  caseId: z.string().nullable(),
  pickId: z.string().nullable(),
  doneAt: z.string(),
});

/** Every move that names a lot of an item. */
export const movesOfLot = (itemId: string, lot: string): SQL => sql`
  SELECT seq, act, quantity, from_stock_id AS fromStockId, from_set_id AS fromSetId, to_stock_id AS toStockId,
      to_set_id AS toSetId, case_id AS caseId, pick_id AS pickId, done_at AS doneAt
    FROM piece_moves INDEXED BY piece_moves_by_lot
    WHERE lot = ${lot} AND item_id = ${itemId} ${STANDS} ORDER BY seq`;

/** What `lotTrace` decides from. Inside or outside a write; it reads as much as the lot has moved, not as there is. */
export function lotFacts(read: Queries, itemId: string, lot: string): LotFacts {
  const rows = z.array(row).parse(read.all(movesOfLot(itemId, lot)));
  const firstSeq = new Map<string, number>();
  for (const { seq, fromSetId, toSetId } of rows)
    for (const setId of [toSetId, fromSetId])
      if (setId !== null && !firstSeq.has(setId)) firstSeq.set(setId, seq);
  return {
    lot,
    moves: rows.map(({ seq: _, ...move }): LotMove => move),
    slots: [...firstSeq].map(([setId, seq]) => ({ setId, moves: slotWindow(read, setId, itemId, seq) })),
  };
}

/** Sets into whose slots pieces of unknown lot came since the lot was first here: any of them may be of it. */
export const unknownLotSlots = (itemId: string, sinceAt: string): SQL => sql`
  SELECT DISTINCT move.to_set_id AS setId FROM piece_moves move INDEXED BY piece_moves_of_unknown_lot
    WHERE move.item_id = ${itemId} AND move.done_at >= ${sinceAt} AND move.lot IS NULL AND move.to_set_id IS NOT NULL
      AND move.act IN ('opening', 'refilled', 'found', 'explained')`;

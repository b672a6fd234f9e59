import { sql } from 'drizzle-orm';
import type { SlotShare } from '@/lib/consignment/slotShare';
import { type UsageLine, waitingLines } from '@/lib/consignment/waiting';
import type { Queries } from '../../client';
import { movesOfHeaps, slotMovesTakenBack } from './ownedMoves';
import { slotsOfOwner } from './slots';

/** Pieces out of a slot that may have been the owner's: shown, told, and charged to nobody. */
export interface UncertainUse extends SlotShare {
  setId: string;
  itemId: string;
}

export interface UsageOfOwner {
  /** What the next usage order is made of. */
  waiting: UsageLine[];
  uncertain: UncertainUse[];
  /** What lies in slots now and may be theirs. */
  inSlots: { setId: string; itemId: string; pieces: number; lo: number; hi: number }[];
}

/** What of an owner's stock was used and no usage order has yet, and what may have been theirs. */
export function usageOfOwner(read: Queries, lenderId: string): UsageOfOwner {
  const slots = slotsOfOwner(read, lenderId);
  const moves = [
    ...movesOfHeaps(read, lenderId),
    ...slotMovesTakenBack(read, lenderId),
    ...slots.flatMap(({ owned }) => owned),
  ];
  return {
    waiting: waitingLines(moves),
    uncertain: slots.flatMap(({ setId, itemId, shares }) =>
      shares.uncertain.map((share) => ({ setId, itemId, ...share })),
    ),
    inSlots: slots.flatMap(({ setId, itemId, shares: { now } }) =>
      now.hi > 0 ? [{ setId, itemId, ...now }] : [],
    ),
  };
}

/** Everybody whose stock lies here, lay here, or was told of use. */
export const ownersOnRecord = (read: Queries): string[] =>
  read
    .all<{ id: string }>(sql`
      SELECT id FROM lenders WHERE EXISTS (SELECT 1 FROM stock WHERE stock.lender_id = lenders.id)
        OR EXISTS (SELECT 1 FROM usage_orders WHERE usage_orders.lender_id = lenders.id) ORDER BY name`)
    .map(({ id }) => id);

import { eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { Queries } from '../../client';
import { movesTakenBack, pieceMoves, returnsTakenBack, useReturns } from '../../schema';
import { recordMoves } from '../pieces/record-moves';
import { moveBase, type Settling } from './move-pieces';
import { addToSlot, slotNow } from './slot-now';

/**
 * Takes back what the moves of an entry did: they stay and count for nothing. What had left a slot by them lies there
 * again; where it was counted since, people have seen that it does not, and it is not found.
 */
export async function takeMovesBack(
  write: Queries,
  settling: Omit<Settling, 'newId'> & { correctedBy: string },
): Promise<void> {
  const { facts, entry, correctedBy, now } = settling;
  const moves = await write.select().from(pieceMoves).where(eq(pieceMoves.source, entry.id));
  for (const { seq } of moves)
    await write.insert(movesTakenBack).values({ moveSeq: seq, entryId: correctedBy });
  const { source, quantity } = entry.act;
  if (source.kind === 'pack') {
    const own = await write.select().from(useReturns).where(eq(useReturns.entryId, entry.id));
    for (const { returnId } of own)
      await write.insert(returnsTakenBack).values({ returnId, entryId: correctedBy });
    return;
  }
  if (moves.length === 0) return;
  const { setId, lineId } = source;
  const slot = { setId, lineId };
  const cameIn = moves.reduce((sum, move) => (move.toSetId === null ? sum : sum + move.quantity), 0);
  const fewer = quantity - cameIn;
  if (fewer <= 0) return;
  const { countedSince } = await slotNow(write, facts, slot);
  const base = { ...moveBase({ ...settling, newId: noId }), source: correctedBy, doneAt: now };
  await recordMoves(write, [
    { ...base, act: 'found', quantity: fewer, to: slot, reason: 'correction' },
    ...(countedSince
      ? [{ ...base, act: 'notFound' as const, quantity: fewer, from: slot, reason: 'bench' }]
      : []),
  ]);
  if (!countedSince) await addToSlot(write, slot, fewer);
}

const noId: NewId = () => {
  throw new Error('taking back makes nothing new');
};

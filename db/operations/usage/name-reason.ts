import { and, eq } from 'drizzle-orm';
import type { Queries } from '../../client';
import { moveReasons, pieceMoves } from '../../schema';

/**
 * Says of pieces that a closed record of use moved out as waste why that was: beside their moves, which stay as they are. The
 * newest of a move counts.
 */
export async function nameReason(
  write: Queries,
  {
    entryId,
    reasonId,
    personId,
    now,
  }: { entryId: string; reasonId: string | null; personId: string; now: string },
): Promise<void> {
  const moves = await write
    .select({ seq: pieceMoves.seq })
    .from(pieceMoves)
    .where(and(eq(pieceMoves.source, entryId), eq(pieceMoves.act, 'wasted')));
  for (const { seq } of moves)
    await write.insert(moveReasons).values({ moveSeq: seq, reasonId, personId, enteredAt: now });
}

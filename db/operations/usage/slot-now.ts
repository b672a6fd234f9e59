import { and, eq, gt, inArray, sql } from 'drizzle-orm';
import type { SlotNow } from '@/lib/usage/settle';
import type { Queries } from '../../client';
import type { TableFacts } from '../../queries/usage/tableFacts';
import {
  countLines,
  counts,
  movesTakenBack,
  pieceMoves,
  setContents,
  sets,
  slotHoldings,
} from '../../schema';
import type { Slot } from '../pieces/record-moves';

/** How the slot stands: what it holds by the journal, and whether it was counted since the set went to the case. */
export async function slotNow(write: Queries, facts: TableFacts, { setId, lineId }: Slot): Promise<SlotNow> {
  const issuedAt = facts.sets.find(({ id }) => id === setId)?.issuedAt ?? '';
  const [[holding], [counted], moves] = await Promise.all([
    write
      .select({ quantity: slotHoldings.quantity })
      .from(slotHoldings)
      .where(and(eq(slotHoldings.setId, setId), eq(slotHoldings.lineId, lineId))),
    write
      .select({ id: counts.id })
      .from(counts)
      .innerJoin(countLines, eq(countLines.countId, counts.id))
      .where(and(eq(counts.setId, setId), eq(countLines.lineId, lineId), gt(counts.countedAt, issuedAt)))
      .limit(1),
    write
      .select()
      .from(pieceMoves)
      .where(and(eq(pieceMoves.caseId, facts.booked.id), inArray(pieceMoves.act, ['notFound', 'explained']))),
  ]);
  const struck = new Set(
    (
      await write
        .select()
        .from(movesTakenBack)
        .where(
          inArray(
            movesTakenBack.moveSeq,
            moves.map(({ seq }) => seq),
          ),
        )
    ).map(({ moveSeq }) => moveSeq),
  );
  const notFoundSince = moves.reduce((sum, move) => {
    if (struck.has(move.seq)) return sum;
    if (move.act === 'explained' && move.toSetId === setId && move.toLineId === lineId)
      return sum - move.quantity;
    const atBench = move.fromSetId === setId && move.fromLineId === lineId && move.reason === 'bench';
    return move.act === 'notFound' && atBench ? sum + move.quantity : sum;
  }, 0);
  return {
    holding: holding?.quantity ?? 0,
    notFoundSince: Math.max(0, notFoundSince),
    countedSince: counted !== undefined,
  };
}

/** What people counted there, less what left it or more by what is back; of a slot nobody counted nothing is said. */
export async function addToSlot(write: Queries, { setId, lineId }: Slot, pieces: number): Promise<void> {
  if (pieces === 0) return;
  const changed = await write
    .update(setContents)
    .set({ found: sql`max(0, ${setContents.found} + ${pieces})` })
    .where(and(eq(setContents.setId, setId), eq(setContents.lineId, lineId)))
    .returning({ lineId: setContents.lineId });
  if (changed.length > 0)
    await write
      .update(sets)
      .set({ revision: sql`${sets.revision} + 1` })
      .where(eq(sets.id, setId));
}

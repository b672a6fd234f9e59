import { and, eq, sql } from 'drizzle-orm';
import type { Queries } from '../../client';
import { loadPacks, loads, packs } from '../../schema';

/** What a set no longer in any pack has no more. */
export const UNPACKED = { packId: null, useBy: null, readyAt: null } as const;

/**
 * Ends the pack a set was in, after the set took the step that opens it: `opened` where it was sterile, `undone` where it
 * never became so. A pack that lay in a load still being made up is taken out of it.
 */
export async function endPack(write: Queries, packId: string | null): Promise<void> {
  if (packId === null) return;
  const [row] = await write
    .select({ pack: packs, loadState: loads.state })
    .from(packs)
    .leftJoin(loads, eq(loads.id, packs.loadId))
    .where(eq(packs.id, packId));
  if (!row || row.pack.state === 'opened' || row.pack.state === 'undone') return;
  const leavesLoad = row.loadState === 'makingUp' && row.pack.loadId !== null;
  if (leavesLoad)
    await write
      .delete(loadPacks)
      .where(and(eq(loadPacks.packId, packId), eq(loadPacks.loadId, row.pack.loadId ?? '')));
  await write
    .update(packs)
    .set({
      state: row.pack.state === 'sterile' ? 'opened' : 'undone',
      ...(leavesLoad ? { loadId: null } : {}),
      revision: sql`${packs.revision} + 1`,
    })
    .where(eq(packs.id, packId));
}

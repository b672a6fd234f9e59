import { and, eq, sql } from 'drizzle-orm';
import type { PackId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { loadWords as words } from '@/lib/wording/loads';
import { packsOfLoad } from '../../queries/loads/packsOfLoad';
import { loadPacks, packs } from '../../schema';
import { atLoad, changeLoad, type LoadNow, type LoadRequest } from './at-load';

/** Takes a pack out of a load before it is started; it is closed and waiting again. */
export async function takePackOut(
  request: LoadRequest & { packId: PackId },
): Promise<Outcome<{ revision: number }, LoadNow>> {
  const { person, now, packId } = request;
  const acting = { act: 'makeUpLoad', verb: 'take packs out', while: ['makingUp'] } as const;
  return atLoad(request, acting, async (write, load) => {
    const pack = (await packsOfLoad(write, load.id)).find(({ id }) => id === packId);
    if (!pack) return refused('notFound', words.notInLoad(packId, load.number));
    await write.delete(loadPacks).where(and(eq(loadPacks.loadId, load.id), eq(loadPacks.packId, packId)));
    await write
      .update(packs)
      .set({ state: 'closed', loadId: null, revision: sql`${packs.revision} + 1` })
      .where(and(eq(packs.id, packId), eq(packs.state, 'inLoad')));
    const detail = { packId, packNumber: pack.number };
    return {
      ok: true,
      value: await changeLoad(write, load, {}, { action: 'take-pack-out', person, now, detail }),
    };
  });
}

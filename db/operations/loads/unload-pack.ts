import { and, eq, sql } from 'drizzle-orm';
import type { PackId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import type { UnloadedAs } from '@/lib/loads/load';
import { UNLOADED_WORDS, loadWords as words } from '@/lib/wording/loads';
import { packsOfLoad } from '../../queries/loads/packsOfLoad';
import { loadPacks, packs, sets } from '../../schema';
import { holdInside } from '../turns/hold-set';
import { atLoad, changeLoad, type LoadNow, type LoadRequest } from './at-load';

interface UnloadPack extends LoadRequest {
  packId: PackId;
  as: UnloadedAs;
}

/**
 * Records how a pack was found when it came out. A wet, torn or unsealed one is no sterile barrier: its set is held at
 * once, and whatever becomes of the load, this pack is not accepted.
 */
export async function unloadPack(request: UnloadPack): Promise<Outcome<{ revision: number }, LoadNow>> {
  const { person, now, newId, packId, as } = request;
  const acting = { act: 'makeUpLoad', verb: 'look at its packs', while: ['awaitingAcceptance'] } as const;
  return atLoad(request, acting, async (write, load) => {
    const pack = (await packsOfLoad(write, load.id)).find(({ id }) => id === packId);
    if (!pack) return refused('notFound', words.notInLoad(packId, load.number));
    if (pack.unloadedAs === as) return { ok: true, value: { revision: load.revision } };
    if (pack.unloadedAs !== null && pack.unloadedAs !== 'sound')
      return refused('frozen', words.unfitStays(pack.name, pack.unloadedAs));
    await write
      .update(loadPacks)
      .set({ unloadedAs: as, unloadedBy: person.id, unloadedAt: now })
      .where(and(eq(loadPacks.loadId, load.id), eq(loadPacks.packId, packId)));
    if (as !== 'sound' && pack.state === 'awaitingAcceptance') {
      await write
        .update(packs)
        .set({ state: 'undone', revision: sql`${packs.revision} + 1` })
        .where(eq(packs.id, packId));
      const [set] = pack.setId === null ? [] : await write.select().from(sets).where(eq(sets.id, pack.setId));
      if (set?.packId === packId) {
        const held = await holdInside(write, {
          set,
          because: 'wrapWetTornOrUnsealed',
          note: `Pack ${pack.number} came out of load ${load.number} ${UNLOADED_WORDS[as]}.`,
          action: 'unload-pack',
          person,
          now,
          newId,
          detail: { loadId: load.id, packId },
        });
        if (!held.ok) throw new Error(held.refusal.problems[0]?.message ?? 'a set can be held at any step');
      }
    }
    const detail = { packId, packNumber: pack.number, as, before: pack.unloadedAs };
    return {
      ok: true,
      value: await changeLoad(write, load, {}, { action: 'unload-pack', person, now, detail }),
    };
  });
}

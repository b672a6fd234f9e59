import { eq, sql } from 'drizzle-orm';
import type { Outcome } from '@/lib/identity/refusal';
import { packsOfLoad } from '../../queries/loads/packsOfLoad';
import { loadPacks, packs } from '../../schema';
import { atLoad, changeLoad, type LoadNow, type LoadRequest } from './at-load';

/** Gives up a load that was never started; its packs are closed and waiting again. */
export async function giveUpLoad(request: LoadRequest): Promise<Outcome<{ revision: number }, LoadNow>> {
  const { person, now } = request;
  const acting = { act: 'makeUpLoad', verb: 'give it up', while: ['makingUp'] } as const;
  return atLoad(request, acting, async (write, load) => {
    const inside = await packsOfLoad(write, load.id);
    await write.delete(loadPacks).where(eq(loadPacks.loadId, load.id));
    for (const { id, state } of inside)
      if (state === 'inLoad')
        await write
          .update(packs)
          .set({ state: 'closed', loadId: null, revision: sql`${packs.revision} + 1` })
          .where(eq(packs.id, id));
    const detail = { packs: inside.map(({ number }) => number) };
    return {
      ok: true,
      value: await changeLoad(
        write,
        load,
        { state: 'undone' },
        { action: 'give-up-load', person, now, detail },
      ),
    };
  });
}

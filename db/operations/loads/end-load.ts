import { and, eq, sql } from 'drizzle-orm';
import type { Outcome } from '@/lib/identity/refusal';
import { packsOfLoad } from '../../queries/loads/packsOfLoad';
import { packs, sets } from '../../schema';
import { takeStep } from '../turns/take-step';
import { atLoad, changeLoad, type LoadNow, type LoadRequest } from './at-load';

/** Ends the run: what was in the steriliser awaits acceptance. Nothing is sterile by this. */
export async function endLoad(request: LoadRequest): Promise<Outcome<{ revision: number }, LoadNow>> {
  const { person, now, newId } = request;
  const acting = { act: 'makeUpLoad', verb: 'end it', while: ['running'] } as const;
  return atLoad(request, acting, async (write, load) => {
    const changed = await changeLoad(
      write,
      load,
      { state: 'awaitingAcceptance', endedBy: person.id, endedAt: now },
      { action: 'end-load', person, now },
    );
    await write
      .update(packs)
      .set({ state: 'awaitingAcceptance', revision: sql`${packs.revision} + 1` })
      .where(and(eq(packs.loadId, load.id), eq(packs.state, 'inLoad')));
    for (const { setId, id } of await packsOfLoad(write, load.id)) {
      if (setId === null) continue;
      const [set] = await write.select().from(sets).where(eq(sets.id, setId));
      if (!set || set.packId !== id) continue;
      if (set.step === 'inSteriliser') {
        const detail = { loadId: load.id, loadNumber: load.number };
        const taken = await takeStep(write, {
          set,
          to: 'awaitingAcceptance',
          action: 'end-load',
          person,
          now,
          newId,
          detail,
        });
        if (!taken.ok) throw new Error(taken.refusal.problems[0]?.message ?? 'the step is open');
      } else if (set.step === 'held' && set.heldFrom === 'inSteriliser') {
        // held while it ran: once the hold is lifted it waits like the others of its load
        await write
          .update(sets)
          .set({ heldFrom: 'awaitingAcceptance', revision: set.revision + 1 })
          .where(eq(sets.id, set.id));
      }
    }
    return { ok: true, value: changed };
  });
}

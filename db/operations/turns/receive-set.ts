import { and, eq } from 'drizzle-orm';
import type { Outcome } from '@/lib/identity/refusal';
import { setPromises } from '../../schema';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { endPack, UNPACKED } from './end-pack';
import { takeStep } from './take-step';

/** Takes a set back from theatre: its turn begins, and whatever wrap it still has no longer counts. */
export async function receiveSet(request: SetRequest): Promise<Outcome<{ revision: number }, SetNow>> {
  const acting = {
    act: 'receiveSet',
    verb: 'receive sets',
    isRepeat: ({ step }: { step: string }) => step === 'comingBack',
  } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    const taken = await takeStep(write, {
      ...request,
      set,
      doneAt,
      to: 'comingBack',
      action: 'receive-set',
      change: UNPACKED,
      detail: { caseId: set.caseId, packId: set.packId },
    });
    if (!taken.ok) return taken;
    await endPack(write, set.packId);
    // the promise is kept: from here on the set is on its way to whoever is next
    if (set.caseId !== null)
      await write
        .delete(setPromises)
        .where(and(eq(setPromises.setId, set.id), eq(setPromises.caseId, set.caseId)));
    return taken;
  });
}

import type { Outcome } from '@/lib/identity/refusal';
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
    if (taken.ok) await endPack(write, set.packId);
    return taken;
  });
}

import { type Outcome, refused } from '@/lib/identity/refusal';
import { canBeCounted } from '@/lib/sets/count';
import { turnStep } from '@/lib/sets/setState';
import { turnWords as words } from '@/lib/wording/turns';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { endPack, UNPACKED } from './end-pack';
import { takeStep } from './take-step';

/**
 * Brings a sealed set to the bench and opens its wrap, so that it can be counted. It is no longer sterile, and nothing
 * here makes it so again.
 */
export async function openSet(request: SetRequest): Promise<Outcome<{ revision: number }, SetNow>> {
  const acting = {
    act: 'openSet',
    verb: 'open sets',
    isRepeat: ({ step }: { step: string }) => step === 'onBench',
  } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    if (canBeCounted(turnStep.parse(set.step))) return refused('frozen', words.openAlready(set.code));
    const taken = await takeStep(write, {
      ...request,
      set,
      doneAt,
      to: 'onBench',
      action: 'open-set',
      change: UNPACKED,
    });
    if (taken.ok) await endPack(write, set.packId);
    return taken;
  });
}

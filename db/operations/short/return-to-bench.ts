import { type Outcome, refused } from '@/lib/identity/refusal';
import { shortWords as words } from '@/lib/wording/short';
import { atSet, type SetNow, type SetRequest } from '../turns/at-set';
import { takeStep } from '../turns/take-step';

/** Takes a set that waits for a decision back to the bench: what was short is to be refilled or counted again. */
export async function returnToBench(request: SetRequest): Promise<Outcome<{ revision: number }, SetNow>> {
  const acting = {
    act: 'packSet',
    verb: 'take a set back to the bench',
    isRepeat: ({ step }: { step: string }) => step === 'onBench',
  } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    if (set.step !== 'shortAwaitingDecision') return refused('frozen', words.notWaiting(set.code));
    return takeStep(write, { ...request, set, doneAt, to: 'onBench', action: 'return-to-bench' });
  });
}

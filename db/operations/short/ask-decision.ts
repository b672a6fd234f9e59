import { type Outcome, refused } from '@/lib/identity/refusal';
import { shortAsk, shortLinesOf } from '@/lib/sets/short/ask';
import { shortWords as words } from '@/lib/wording/short';
import { shortFacts } from '../../queries/short/facts';
import { atSet, type SetNow, type SetRequest } from '../turns/at-set';
import { takeStep } from '../turns/take-step';
import { keepRefillJobs } from './keep-refill-jobs';
import { tellApprovers } from './tell-approvers';

/**
 * Sets a short set aside on the bench until those who have to decide have decided. Only where somebody can: what is not
 * counted, or holds pieces without a home, waits for nobody's decision.
 */
export async function askDecision(request: SetRequest): Promise<Outcome<{ revision: number }, SetNow>> {
  const acting = {
    act: 'packSet',
    verb: 'ask for a decision on a short set',
    isRepeat: ({ step }: { step: string }) => step === 'shortAwaitingDecision',
  } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    if (set.step !== 'onBench') return refused('frozen', words.notOnBench(set.code));
    const facts = await shortFacts(write, set, request.now);
    const ask = shortAsk(facts);
    if (ask.asks === 'nothing') return refused('frozen', words.nothingShort(set.code));
    if (ask.asks === 'technician') return refused('frozen', words.technicianMay(set.code));
    if (ask.asks === 'nobody') return refused('frozen', words.neverGoes(set.code));
    const short = shortLinesOf(ask.findings);
    const taken = await takeStep(write, {
      ...request,
      set,
      doneAt,
      to: 'shortAwaitingDecision',
      action: 'ask-short-decision',
      detail: { lines: short, approvers: ask.approvers },
    });
    if (!taken.ok) return taken;
    await keepRefillJobs(write, { ...request, set, turnId: taken.value.turnId, lines: facts.lines });
    await tellApprovers(write, { ...request, set, ask });
    return taken;
  });
}

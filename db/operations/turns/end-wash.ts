import { type Outcome, refused } from '@/lib/identity/refusal';
import { turnStep } from '@/lib/sets/setState';
import { turnWords as words } from '@/lib/wording/turns';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { holdInside } from './hold-set';
import { takeStep } from './take-step';

interface EndWash extends SetRequest {
  /** What was seen when it came out: nobody says “clean” for the washer. */
  seen: 'clean' | 'dirty';
  note?: string | null | undefined;
}

/** Takes a set out of washing: clean, to the bench; found dirty, it is held for that reason. */
export async function endWash(request: EndWash): Promise<Outcome<{ revision: number }, SetNow>> {
  const { seen, note } = request;
  const acting = {
    act: 'washSet',
    verb: 'wash sets',
    text: { name: 'note', value: note ?? null, needed: false },
    isRepeat: ({ step }: { step: string }) => step === (seen === 'clean' ? 'onBench' : 'held'),
  } as const;
  return atSet(request, acting, async (write, { set, doneAt }) => {
    const step = turnStep.parse(set.step);
    if (step !== 'washing')
      return refused('frozen', words.illegal(set.code, step, seen === 'clean' ? 'onBench' : 'held'));
    return seen === 'clean'
      ? takeStep(write, { ...request, set, doneAt, to: 'onBench', action: 'end-wash' })
      : holdInside(write, { ...request, set, doneAt, because: 'dirtyAfterWash', action: 'end-wash' });
  });
}

import type { Outcome } from '@/lib/identity/refusal';
import { atSet, type SetNow, type SetRequest } from './at-set';
import { takeStep } from './take-step';

/** Puts a set that came back, or that was seen to be dirty on the bench, into washing. */
export async function beginWash(request: SetRequest): Promise<Outcome<{ revision: number }, SetNow>> {
  const acting = {
    act: 'washSet',
    verb: 'wash sets',
    isRepeat: ({ step }: { step: string }) => step === 'washing',
  } as const;
  return atSet(request, acting, (write, { set, doneAt }) =>
    takeStep(write, { ...request, set, doneAt, to: 'washing', action: 'begin-wash' }),
  );
}

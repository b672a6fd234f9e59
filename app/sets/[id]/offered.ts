import type { CountOnFile } from '@/db/queries/sets';
import type { SetTurn } from '@/db/queries/turns/setTurn';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import type { TurnStep } from '@/lib/sets/setState';
import { ACT_OF, screenOf } from '@/lib/turns/acts';
import { nextAct } from '@/lib/turns/queue';
import { WITHDRAWABLE_STEPS } from '@/lib/turns/steps';
import type { Offered } from './set-steps';

/** Whether anybody counted the set since a moment. */
export const countedSince = (counts: readonly CountOnFile[], since: string): boolean =>
  counts.some(({ countedAt }) => Date.parse(countedAt) > Date.parse(since));

/** Steps from which a closed wrap can be opened on the bench. */
const OPENABLE: ReadonlySet<TurnStep> = new Set(['packed', 'awaitingAcceptance', 'inSterileStore']);

export const mayOpen = (step: TurnStep, { withdrawn }: SetTurn): boolean =>
  withdrawn === null && OPENABLE.has(step);

/** What a person of this role is offered; the operations ask again. */
export function offeredTo(
  role: Role,
  step: TurnStep,
  turn: SetTurn,
  counted: boolean,
  setId: string,
): Offered {
  const service = turn.withdrawn === null;
  const act = step === 'inSterileStore' ? null : nextAct(step, counted);
  return {
    next:
      act === null || !service
        ? null
        : { act, mayAct: may({ role }, ACT_OF[act]), href: screenOf(act, setId, turn.load?.id ?? null) },
    send: service && step === 'inSterileStore' && may({ role }, 'sendToTheatre'),
    hold: may({ role }, 'holdSet'),
    lift: service && step === 'held' && may({ role }, 'liftHold'),
    reprocess: service && OPENABLE.has(step) && may({ role }, 'washSet'),
    wash: service && step === 'onBench' && may({ role }, 'washSet'),
    move: may({ role }, 'moveSet'),
    withdraw: service && WITHDRAWABLE_STEPS.has(step) && may({ role }, 'withdrawSet'),
    bringBack: !service && may({ role }, 'withdrawSet'),
  };
}

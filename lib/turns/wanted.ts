import type { TurnStep } from '../sets/setState';

/** That a set is wanted in the sterile store sooner than its turn would bring it. */
export interface WantedTurn {
  setId: string;
  wantedBy: string;
  forCase: { id: string; reference: string; startsAt: string };
  /** The turn after this case is meant; `null`: the one it was in when it was asked for. */
  afterCase: { id: string; startsAt: string } | null;
  askedBy: string;
  askedAt: string;
  /** When it last came to the sterile store; `null`: never yet. */
  storedAt: string | null;
}

/**
 * Whether the turn that is meant is going on now. The hurry ends in the sterile store, or when the case it is for begins; where
 * it is the turn after that very case, so that the case can have the set at all, when it is wanted by.
 */
export function isWantedNow(
  { forCase, afterCase, askedAt, storedAt, wantedBy }: WantedTurn,
  set: { step: TurnStep; caseId: string | null },
  now: string,
): boolean {
  const until = afterCase?.id === forCase.id ? wantedBy : forCase.startsAt;
  if (set.step === 'inSterileStore' || until <= now) return false;
  const from = afterCase === null ? askedAt : afterCase.startsAt;
  if (storedAt !== null && storedAt >= from) return false;
  return afterCase === null || set.caseId === afterCase.id || afterCase.startsAt <= now;
}

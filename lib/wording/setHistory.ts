import type { HeldBecause, PieceCondition, TurnStep } from '../sets/setState';
import { capitalised } from './numbers';
import { CONDITION_WORDS, HELD_BECAUSE_WORDS, TURN_STEP_WORDS } from './sets';

/** A step in the words of its history: `Held, because its label is wrong`, `On bench, from washing`. */
export function stepSentence(from: TurnStep | null, step: TurnStep, because: string | null): string {
  if (step === 'held') {
    const why = HELD_BECAUSE_WORDS[because as HeldBecause] ?? because ?? 'nobody has said why';
    return from === 'held' ? `Held for one more reason: ${why}` : `Held, because ${why}`;
  }
  if (from === 'held') return `Hold lifted: ${TURN_STEP_WORDS[step]}`;
  return capitalised(TURN_STEP_WORDS[step]);
}

export const setHistoryWords = {
  counted: 'Counted',
  packed: (number: string, barrier: string, short: boolean) =>
    `Packed as ${number}, ${barrier}${short ? ', SHORT' : ''}`,
  decided: (how: string) =>
    ({
      backUps: 'Let go short: back-ups only',
      withSubstitute: 'Let go short with its substitute',
      oneCase: 'Let go short for one case',
    })[how] ?? 'Let go short',
  aside: (quantity: number, item: string, condition: string) =>
    `${quantity} × ${item} put aside: ${CONDITION_WORDS[condition as PieceCondition] ?? condition}`,
  refillAsked: (quantity: number, item: string) => `Refill asked for: ${quantity} × ${item}`,
  refillFixed: (quantity: number, item: string) => `Refilled: ${quantity} × ${item}`,
  /** What the ledger calls it, and the reason in it. */
  entry: (action: string, detail: Record<string, unknown>) => {
    const reason = typeof detail.reason === 'string' ? `: ${detail.reason}` : '';
    const said: Record<string, string> = {
      'move-set': 'Moved to another place',
      'withdraw-set': `Taken out of service${reason}`,
      'bring-back-set': `Brought back into service${reason}`,
      'refit-set': `Refitted from version ${String(detail.from)} to ${String(detail.to)}`,
    };
    return said[action] ?? action;
  },
};

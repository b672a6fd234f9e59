import type { TurnStep } from '../sets/setState';
import { TURN_STEP_WORDS } from './sets';

/** What can be wrong with a step of a turn, and the way out. */
export const turnWords = {
  withdrawn: (code: string) => `${code} is out of service: it takes no step until it is brought back.`,
  illegal: (code: string, from: TurnStep, to: TurnStep) =>
    `${code} is ${TURN_STEP_WORDS[from]}; from there it can’t go to “${TURN_STEP_WORDS[to]}”.`,
  changed: (code: string) => `${code} was changed by someone else. Nothing was saved.`,
  noSuchSet: 'There is no such set.',
};

import type { Reason, ReasonKind } from '../reasons/reason';

/** The words of the hospital's own reasons for delay and for waste. */

export const REASON_KIND_WORDS: Record<ReasonKind, string> = { delay: 'Delay', waste: 'Waste' };

/** What nobody gave a reason for: it is counted and shown, and never guessed. */
export const NO_REASON = 'not stated';

/** `the length was changed (L1)`; a reason out of use keeps its words. */
export const reasonWords = ({ code, words }: Pick<Reason, 'code' | 'words'>): string => `${words} (${code})`;

/** What can be wrong with the list of reasons, and the way out. */
export const reasonsWords = {
  mayNot: (name: string) =>
    `${name} can’t change the list of reasons: a theatre manager or administrator keeps it.`,
  noSuch: 'There is no such reason.',
  codeTaken: (code: string) =>
    `${code} is a reason of this list already, in use or retired. A code keeps what it means: choose another.`,
  wordsTaken: (words: string) => `“${words}” is a reason in use already.`,
  changed: (words: string) => `“${words}” was changed meanwhile: look at it again. Nothing was changed.`,
  orderChanged: 'The list was changed meanwhile: look at it again. Nothing was moved.',
  sameOrder: 'The list stands in this order already.',
  sameStanding: (words: string, inUse: boolean) => `“${words}” is ${inUse ? 'in use' : 'retired'} already.`,
};

import type { Blocked } from '../kits/buildable';
import type { Needs } from '../kits/need';
import type { Evidence } from '../review/pastCase';
import { CHAIN_WORDS, SLOT_WORDS, stepsWords } from './kit-parts';
import { capitalised } from './numbers';

/** A need of a plan that a set alone does not meet: `Drilling, for S1–S3`. */
export function unmetWords(blocked: Blocked, needs: Pick<Needs, 'steps'>): string {
  const what = blocked.kind === 'chain' ? CHAIN_WORDS[blocked.chain] : capitalised(SLOT_WORDS[blocked.what]);
  return `${what}, for ${stepsWords(blocked.steps, needs)}`;
}

/** How the use of a line is known. */
export const EVIDENCE_WORDS: Record<Evidence, string> = {
  recorded: 'recorded at the table',
  planned: 'could have served the plan',
  none: 'not recorded',
};

export const reviewWords = {
  notRecorded: 'Nobody records when it is used; it is never taken as unused.',
  /** Of an instrument is known what the plan could be served by, not what was in a hand. */
  byPlans: (sentence: string) => sentence.replace(/^Used in/, 'By their plans, could have served in'),
  noSuchLine: 'There is no such line in the version in force.',
  lineTwice: 'This line is named twice: keep one.',
  backUpStays:
    'A back-up is not taken out or made fewer by a review: change it in a draft of your own, and say why.',
  belowMinimum: (minimum: number) =>
    `Its minimum is ${minimum}: keep as many, take the line out, or change the minimum in the draft.`,
  nothingChanged: 'Change the quantity of at least one line.',
  sayWhy: 'Say why: it stands on the draft.',
  draftOpen: (version: number) =>
    `Version ${version} is in draft already: go on with it, or throw it away first. Nothing was changed.`,
  otherInForce:
    'Another version has come into force meanwhile: look at its review first. Nothing was changed.',
};

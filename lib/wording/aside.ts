import type { PieceCondition } from '../sets/setState';
import type { AsideOutcome } from '../turns/aside';
import { CONDITION_WORDS } from './sets';

/** What became of a piece that was put aside. */
export const ASIDE_OUTCOME_WORDS: Record<AsideOutcome, string> = {
  repaired: 'repaired',
  discarded: 'discarded',
  notRepairable: 'can’t be repaired, discarded',
};

/** Where a piece put aside was meant to go when it was found. */
export const ASIDE_ROUTE_WORDS: Record<'repair' | 'discard', string> = {
  repair: 'to repair',
  discard: 'to be discarded',
};

export const asideWords = {
  notPermitted: (name: string) => `${name} can’t say what became of pieces put aside.`,
  noSuchPiece: 'There is no such piece put aside.',
  settledAlready: (item: string, outcome: AsideOutcome) =>
    `${item} was settled meanwhile: ${ASIDE_OUTCOME_WORDS[outcome]}. Nothing was saved.`,
  onlyDiscard: (item: string, condition: PieceCondition) =>
    condition === 'bent'
      ? `${item} is bent: it is discarded, never straightened.`
      : `${item} is ${CONDITION_WORDS[condition]} and made for one use: it is discarded.`,
  shelfNeeded: 'Choose the shelf the repaired piece is put on.',
};

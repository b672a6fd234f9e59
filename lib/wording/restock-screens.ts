import type { ReorderOutput } from '../calculations/reorder/schema';
import type { Gap } from '../restock/gaps';
import { CHAIN_WORDS, type ItemName, SLOT_WORDS } from './kit-parts';
import { capitalised, countWord, listWords } from './numbers';
import { CLASS_WORDS, fitWords, MODEL_WORDS, WHY_MODEL_WORDS } from './restock';

/** `£1,234.50`; where a price is lacking, that it is not established. */
export function poundsWords(pence: number | null): string {
  if (pence === null) return 'not established: a price is not stated';
  return `£${(pence / 100).toLocaleString('en-GB', { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
}

export const PROPOSAL_STATE_WORDS = {
  proposed: 'Proposed: nothing is ordered yet',
  approved: 'Approved and ordered',
  superseded: 'Superseded by a newer one',
  turnedDown: 'Turned down',
} as const;

export const PROPOSAL_STATE_TONES = {
  proposed: 'attention',
  approved: 'good',
  superseded: 'neutral',
  turnedDown: 'stop',
} as const;

/** `Poisson; intermittent: now and then, in like sizes`. */
export function modelWords(answer: ReorderOutput | null): string | null {
  if (answer === null) return null;
  const { model, why, demandClass } = answer;
  const seen = demandClass ? `. Demand is ${CLASS_WORDS[demandClass.class]}` : '';
  return `${capitalised(MODEL_WORDS[model])}: ${WHY_MODEL_WORDS[why]}${seen}`;
}

/** How well the chosen model fits, in words. */
export function chosenFitWords(answer: ReorderOutput | null): string | null {
  const [chosen] = answer?.fits ?? [];
  return chosen ? fitWords(chosen) : null;
}

/** What a booked case lacks, by name. */
export function gapName(gap: Gap, name: ItemName): string {
  if (gap.kind === 'chain') return CHAIN_WORDS[gap.chain];
  if (gap.accepts.length === 0) return `A ${SLOT_WORDS[gap.what]} for which nothing current serves`;
  return capitalised(listWords(gap.accepts.map(name), 'or'));
}

/** `a sleeve`, `an insert sleeve`. */
const aOr = (word: string) => `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;

/** Why it lacks. */
export function gapSentence(gap: Gap): string {
  if (gap.kind === 'chain') {
    return gap.lacking.length === 0
      ? 'There are instruments for it, but none that fit one another.'
      : `Nowhere is there ${listWords(
          [...new Set(gap.lacking)].map((slot) => aOr(SLOT_WORDS[slot])),
          'or',
        )} that fits.`;
  }
  if (gap.accepts.length === 0) return 'See what the plan asks for there.';
  const some = gap.pieces === 1 ? 'One piece lacks' : `${capitalised(countWord(gap.pieces))} pieces lack`;
  return gap.takenEarlier
    ? `${some}: cases that begin earlier take what there is.`
    : `${some}: neither a set nor the shelf has ${gap.accepts.length === 1 ? 'it' : 'any of them'}.`;
}

/** What the backtest says of itself. */
export const backtestWords = {
  tooLittle: ({ days, withoutLead }: { days: number; withoutLead: number }) =>
    withoutLead > 0
      ? `${days} days are on record, but of none of the items that were used anybody has stated how long they take to come.`
      : `${days} days are on record; half a year is needed, with at least one use in it.`,
  replayed: (of: { items: number; days: number; warmUpDays: number; begins: string | null }) =>
    `${of.items} ${of.items === 1 ? 'item that was' : 'items that were'} used, ${of.days} days from ${of.begins ?? 'the beginning'}; the ${of.warmUpDays} days before are only learned from.`,
  withoutLead: (items: number) =>
    `${items} more ${items === 1 ? 'item was' : 'items were'} used, but nobody has stated how long ${items === 1 ? 'it takes' : 'they take'} to come.`,
  parIs: (weeks: number) => `the par level is ${weeks} weeks of what was used before the replay began`,
  rules: [
    'A day goes: what was ordered comes, what is past its use-by is thrown away, cases take, first expired first, and on a day of review orders are made from what was known by then.',
    'What was not there was got elsewhere: it is lost to the shelf, and not asked for again.',
    'Demand is learned anew every four weeks from the days before, and from no day after. Until thirteen weeks are known the par level is ordered up to.',
    'A case counts as booked from the day its plan was confirmed; of cases without one nothing is known beforehand.',
    'Makers take as long as stated each time. Prices are those of the catalogue now.',
  ],
};

import type { PairsEffect } from '../changes/trial';
import type { Outcome } from '../fit/question';

const WORDS: Record<Outcome, string> = {
  fits: 'fits',
  doesNotFit: 'does not fit',
  notEstablished: 'not established',
};

export const outcomeLabel = (outcome: Outcome): string =>
  WORDS[outcome].charAt(0).toUpperCase() + WORDS[outcome].slice(1);

const number = (value: number) => value.toLocaleString('en-GB');

/** What a change would do, in one sentence. */
export function effectSentence({
  asked,
  changed: pairs,
  otherwiseSaid,
}: {
  asked: number;
  changed: number;
  otherwiseSaid: number;
}): string {
  if (asked === 0) return 'The catalogue has no pair that this rule could be asked about.';
  const said = otherwiseSaid > 0 ? ` About ${number(otherwiseSaid)} more it would say something else.` : '';
  return pairs === 0
    ? `Of ${number(asked)} pairs in the catalogue, none would get another answer.${said}`
    : `Of ${number(asked)} pairs in the catalogue, ${number(pairs)} would get another answer.${said}`;
}

/** One line of the count: `12 pairs: does not fit → fits`. */
export function countSentence({ before, after, pairs }: PairsEffect['counts'][number]): string {
  return `${number(pairs)} ${pairs === 1 ? 'pair' : 'pairs'}: ${WORDS[before]} → ${WORDS[after]}`;
}

import { LEAST_CASES_OF_ALL, LEAST_CASES_OF_EACH, type Together } from '../review/together';

/** `2.8 times as often`, to one decimal; a lift of 1 is as often as by chance. */
const timesWords = (lift: number): string => `${lift.toFixed(1)} times as often`;

/** `under 0.1 %`, `3.2 %`. */
export const chanceWords = (chance: number): string =>
  chance < 0.001 ? 'under 0.1 %' : `${(chance * 100).toFixed(1)} %`;

/** What the figures of a pair say, in a sentence. It proposes nothing but a look. */
export function togetherWords({ verdict, lift, chanceOfAny }: Together): string {
  switch (verdict) {
    case 'tooFew':
      return `Too few cases to say: it takes ${LEAST_CASES_OF_ALL} in all, and ${LEAST_CASES_OF_EACH} with each of the two.`;
    case 'notShown':
      return lift <= 1
        ? 'Not oftener than by chance.'
        : `Not shown to be oftener than by chance: so much comes about by chance in ${chanceWords(chanceOfAny)}.`;
    case 'oftener':
      return `Opened together ${timesWords(lift)} as by chance; that comes about by chance in ${chanceWords(chanceOfAny)}. They could be looked at together.`;
  }
}

/** How the figures are worked out, beneath them. */
export const togetherNote = (compared: number): string =>
  `Expected by chance: were each opened without regard to the other. The chance of as many or more is exact (hypergeometric, one-sided: Fisher’s exact test), and multiplied by the ${compared} configurations compared (Bonferroni), since of many comparisons some always look striking. Operations that need both explain it as well as a habit does: it says nothing about why.`;

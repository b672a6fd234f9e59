import type { RiskLine, RiskTime } from '../theatre/planning/risk';
import { timeWords } from './case-standing';
import { capitalised, countWord, listWords } from './numbers';
import { momentWords } from './sets';
import { minutesWords } from './work';

/** When the case’s sets can be had, against when they are needed. */
export function marginWords(time: RiskTime): string {
  switch (time.kind) {
    case 'there':
      return 'in the sterile store';
    case 'coming':
      return `${minutesWords(time.marginMinutes)} to spare${time.tight ? ', which is tight' : ''}`;
    case 'misses':
      return `${minutesWords(time.slipMinutes)} too late`;
    case 'unknown':
      return 'nobody can say when it is ready';
  }
}

/** `needed 07:30`, with the day where it is not today. */
export const neededWords = (needBy: string, now: string): string =>
  `needed by ${needBy < now ? momentWords(needBy, now) : timeWords(needBy, now)}`;

const BECAUSE: Record<RiskLine['givenUp'][number]['because'], string> = {
  notReady: 'it is not ready in time',
  readyUnknown: 'nobody can say when it is ready',
  notSuitable: 'it no longer has what the plan needs',
  betterPlan: 'another case needs it more',
};

/** What there is to know besides how the case stands: promises that no longer hold, sets not promised yet. */
export function besidesWords({ givenUp, notPromised }: RiskLine): string[] {
  return [
    ...givenUp.map(({ set, because }) => `${set} is promised to it, but ${BECAUSE[because]}.`),
    ...(notPromised.length === 0
      ? []
      : [
          `${listWords(notPromised)} ${notPromised.length === 1 ? 'is' : 'are'} not promised to it yet: by the plan, nobody else needs ${notPromised.length === 1 ? 'it' : 'them'} then.`,
        ]),
  ];
}

/** That somebody asked for one of its sets to be there sooner. */
export const askedWords = (
  { set, wantedBy, askedBy }: { set: string; wantedBy: string; askedBy: string },
  now: string,
): string => `${set} is asked for by ${timeWords(wantedBy, now)}, by ${askedBy}: it comes first in the work.`;

/** `Two cases cannot go as they stand, three are not sure, nine are ready.` */
export function boardWords(stops: number, notSure: number, fine: number): string {
  if (stops + notSure + fine === 0) return 'No case to come.';
  const some = (count: number) =>
    count === 0 ? 'none is' : `${countWord(count)} ${count === 1 ? 'is' : 'are'}`;
  if (stops + notSure === 0)
    return fine === 1 ? 'The one case is ready.' : `All ${countWord(fine)} are ready.`;
  const cannot =
    stops === 0
      ? 'no case is stopped'
      : stops === 1
        ? 'one case cannot go as it stands'
        : `${countWord(stops)} cases cannot go as they stand`;
  return capitalised(`${cannot}, ${some(notSure)} not sure, ${some(fine)} ready.`);
}

/** `One case is ready`. */
export const fineWords = (count: number): string =>
  count === 1 ? 'One case is ready' : `${capitalised(countWord(count))} cases are ready`;

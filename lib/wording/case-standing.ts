import type { ItemId } from '../identity/ids';
import { never } from '../identity/result';
import type { MissingPieces } from '../kits/missingPieces';
import { wallClock } from '../theatre/localTime';
import type { CaseStanding, GivenSet } from '../theatre/planning/standing';
import { SLOT_WORDS } from './kit-parts';
import { hoursWords } from './loan-notice';
import { listWords } from './numbers';
import { momentWords } from './sets';

export interface StandingWords {
  tone: 'good' | 'attention' | 'stop' | 'unknown';
  word: string;
  /** Why, with times. */
  sentence: string;
}

/** How cases stand alike, for counting them: without times and pieces. */
export const STANDING_GROUPS: Record<CaseStanding['kind'], string> = {
  ready: 'Ready',
  readyWith: 'Ready with a pouch',
  waiting: 'Waiting for a set',
  noSetFree: 'No set free',
  shortOf: 'Short',
  notPlanned: 'Not planned',
};

/**
 * How a case stands, in a word and a sentence. What follows from a draft is never called ready: the surgeon has not
 * confirmed it.
 *
 * @param pouch calls a stock id by the name of its item
 * @param item  calls an item by its name
 */
export function caseStandingWords(
  standing: CaseStanding,
  {
    now,
    confirmed,
    pouch,
    item,
  }: {
    now: string;
    confirmed: boolean;
    pouch: (stockId: string) => string;
    item: (id: ItemId) => string;
  },
): StandingWords {
  const said = wordsOf(standing, now, { pouch, item });
  if (confirmed || said.tone !== 'good') return said;
  return {
    tone: 'attention',
    word: 'Plan not confirmed',
    sentence: `As the draft stands: ${said.sentence}`,
  };
}

interface Names {
  pouch: (stockId: string) => string;
  item: (id: ItemId) => string;
}

function wordsOf(standing: CaseStanding, now: string, { pouch, item }: Names): StandingWords {
  switch (standing.kind) {
    case 'notPlanned':
      return {
        tone: 'unknown',
        word: 'Not planned',
        sentence: 'What it needs is not known until a surgeon states a plan.',
      };
    case 'shortOf':
      return {
        tone: 'stop',
        word: 'Short',
        sentence: shortSentence(standing, item),
      };
    case 'ready':
      return {
        tone: 'good',
        word: 'Ready',
        sentence:
          standing.sets.length === 0
            ? 'Its plan needs no set.'
            : `${listWords(codes(standing.sets))} in the sterile store.`,
      };
    case 'readyWith':
      return {
        tone: 'good',
        word: `Ready with ${standing.pouches.length === 1 ? 'a pouch' : 'pouches'}`,
        sentence: `${listWords(codes(standing.sets))} in the sterile store, and ${pouchWords(standing.pouches, pouch)}.`,
      };
    case 'waiting': {
      const away = standing.sets.filter(({ there }) => !there);
      const tight = away.some((set) => set.tight);
      return {
        tone: 'attention',
        // its usual time is over, and nobody can say when it comes
        word: standing.until <= now ? 'Waiting, overdue' : `Waiting until ${timeWords(standing.until, now)}`,
        sentence: `${away.map((set) => awayWords(set, now)).join('; ')}.${tight ? ' That is tight.' : ''}`,
      };
    }
    case 'noSetFree':
      return {
        tone: 'stop',
        word: 'No set free',
        sentence: `${obstacleWords(standing, now)}${
          standing.slipMinutes === null
            ? ''
            : ` ${hoursWords(standing.slipMinutes)} later there would be one.`
        }`,
      };
  }
}

/** Which pieces no set and no pouch of the hospital has, by name and number. */
function shortSentence(
  { missing, outOfReach }: Extract<CaseStanding, { kind: 'shortOf' }>,
  item: Names['item'],
): string {
  const lacks =
    missing.length === 0
      ? 'Something the plan needs is in no set and no pouch of the hospital.'
      : `Short of ${missing.map((one) => missingWords(one, item)).join('; ')}.`;
  if (outOfReach.length === 0) return lacks;
  return `${lacks} ${listWords(outOfReach)} ${outOfReach.length === 1 ? 'holds' : 'hold'} some of it, but can’t come round in time: held, past use-by, or let go for one other case.`;
}

/** `2 × screw 16 mm`, `1 × bit A or 1 × bit B`. */
function missingWords(one: MissingPieces, item: Names['item']): string {
  if (one.kind === 'pieces') {
    if (one.anyOf.length > 0) return `${one.pieces} × ${listWords(one.anyOf.map(item), 'or')}`;
    const asked = one.asked === null ? 'a piece the plan names' : item(one.asked);
    return `${one.pieces} × ${asked}, for which nothing current serves`;
  }
  const ways = one.anyOf.map((way) =>
    listWords(way.map(({ itemId, pieces }) => `${pieces} × ${item(itemId)}`)),
  );
  if (ways.length > 0) return listWords(ways, 'or');
  const slots = one.slots.map((slot) => SLOT_WORDS[slot]);
  return `${slots.length === 0 ? 'instruments that fit each other' : listWords(slots)}, which nothing in the catalogue makes up`;
}

const codes = (sets: readonly GivenSet[]) => sets.map(({ code }) => code);

function pouchWords(pouches: readonly string[], pouch: (stockId: string) => string): string {
  const counts = new Map<string, number>();
  for (const one of pouches) counts.set(pouch(one), (counts.get(pouch(one)) ?? 0) + 1);
  return listWords([...counts].map(([name, count]) => `${count} × ${name}`));
}

const awayWords = ({ code, readyAt, afterCase }: GivenSet, now: string) =>
  readyAt <= now
    ? `${code} not in the sterile store though its usual time is over`
    : `${code} ${afterCase === null ? '' : `after ${afterCase} `}ready ${timeWords(readyAt, now)}`;

function obstacleWords(standing: Extract<CaseStanding, { kind: 'noSetFree' }>, now: string): string {
  const inTheWay = standing.obstacles.filter(({ kind }) => kind !== 'onlyThis');
  // a set that would do is worth a word only where nothing else is known to be in the way
  const bySet = new Map((inTheWay.length > 0 ? inTheWay : standing.obstacles).map((one) => [one.set, one]));
  const said = [...bySet.values()].slice(0, 4).map(({ set, kind, byCase, atMs }) => {
    const when = atMs === null ? '' : ` ${timeWords(new Date(atMs).toISOString(), now)}`;
    switch (kind) {
      case 'readyUnknown':
        return `nobody can say when ${set} is ready`;
      case 'notReady':
        return `${set} is ready${when}`;
      case 'inUse':
        return `${set} is with ${byCase ?? 'another case'} until${when}`;
      case 'neededNext':
        return `${set} is needed next by ${byCase ?? 'another case'}${when}`;
      case 'noPouch':
        return `the pouch that goes with ${set} is taken`;
      case 'onlyThis':
        return `${set} is free, but does not do alone`;
      default:
        return never(kind);
    }
  });
  const more = bySet.size > 4 ? ` and ${bySet.size - 4} more` : '';
  const text = said.length === 0 ? 'No set can be had' : `${said.join('; ')}${more}`;
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** `14:40`, with the day where it is not today. */
export function timeWords(instant: string, now: string): string {
  return wallClock(instant).date === wallClock(now).date
    ? wallClock(instant).time
    : momentWords(instant, now);
}

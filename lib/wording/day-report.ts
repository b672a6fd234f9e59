import type { ItemId } from '../identity/ids';
import { wallClock } from '../theatre/localTime';
import type { Bucket, CaseLine } from '../theatre/report/lines';
import type { LackingSet, TurnedBetween, WantedSet } from '../theatre/report/wantedSets';
import { caseStandingWords, type StandingWords } from './case-standing';
import { countWord, listWords } from './numbers';
import { momentWords, stepWords, stopAbout, stopWords } from './sets';
import { minutesWords } from './work';

/** What reports call things by, and when they were made. */
export interface ReportNames {
  now: string;
  item: (id: ItemId) => string;
  /** The name of the item of a pouch, by stock id. */
  pouch: (stockId: string) => string;
}

export const NOT_KNOWN = 'not known';

export const dayReportWords = {
  morning: 'Morning report',
  dayBefore: 'Day-before report',
  morningLead: 'What the theatres can begin with, and what to see to first.',
  dayBeforeLead: 'What must be asked for and hurried before this day begins.',
  first: 'What to do first',
  firstNote: 'by when the sets must stand in theatre',
  firstNone: 'Nothing keeps a case of this day from being ready.',
  theatres: 'Theatre by theatre',
  onTheWay: 'Sets still on their way',
  onTheWayNone: 'No set that a case of this day counts on is on its way.',
  expected: 'half of the time, and nine times in ten',
  lacking: 'Sets short or held that a case wants',
  lackingNone: 'None of the kinds of set that these cases ask for is short or held.',
  turned: 'Turned between two cases of the day',
  turnedNone: 'No set has to serve two cases of this day.',
  ask: 'To be asked for today',
  askNote: 'for this day',
  askNone:
    'Every case has a confirmed plan; nothing it counts on is past use-by, and the shelf refills what it takes.',
  noCase: 'No case on this day',
  dayTerm: 'Day',
  asOfTerm: 'As things stood',
  captions: {
    theatre: (theatre: string) => `Cases in ${theatre}`,
    onTheWay: 'Each set with when it is expected',
    lacking: 'Each set with why',
    turned: 'Each set with what lies between',
  },
  columns: {
    time: 'Time',
    case: 'Case',
    standing: 'How it stands',
    sets: 'Sets and pouches',
    needBy: 'Need by',
    margin: 'Margin',
    set: 'Set',
    where: 'Where it is',
    p50: 'Half of the time',
    p90: 'Nine in ten',
    for: 'For',
    why: 'Why',
    between: 'Between',
    back: 'Back',
    by: 'By',
    what: 'What',
    done: 'Done',
  },
  figures: {
    cases: 'Cases',
    ready: 'Ready',
    waiting: 'Waiting for a set',
    short: 'Short, or no set free',
    notPlanned: 'Not planned',
    notConfirmed: 'Plan not confirmed',
    begun: 'Begun',
    over: 'Over',
    notKnown: 'Not known yet',
  } satisfies Record<Bucket | 'cases', string>,
};

/** Figures that stand at the head of every report; the others only where there are any. */
const ALWAYS_SHOWN: readonly Bucket[] = ['ready', 'waiting', 'short', 'notPlanned'];
const SHOWN_IF_ANY: readonly Bucket[] = ['notConfirmed', 'begun', 'over', 'notKnown'];

/** How a case stands: by the plan of who gets which set, or that it is past that. */
export function lineStanding(
  { standing, bucket, confirmed }: CaseLine,
  names: ReportNames,
): StandingWords | { tone: 'neutral'; word: string; sentence: string } {
  if (standing !== null) return caseStandingWords(standing, { ...names, confirmed });
  if (bucket === 'over') return { tone: 'neutral', word: 'Over', sentence: '' };
  if (bucket === 'begun')
    return {
      tone: 'neutral',
      word: 'Begun',
      sentence: 'Its sets have gone to theatre, or its time has come.',
    };
  return {
    tone: 'unknown',
    word: 'Not known yet',
    sentence: 'It is beyond what is planned ahead.',
  };
}

/** `today 07:30`, or that it is not known. */
export const whenWords = (at: string | null, now: string): string =>
  at === null ? NOT_KNOWN : momentWords(at, now);

/** When a set on its way can be expected, said as a half and as nine in ten; past that, nobody has moved it on. */
export function expectedWords(
  expected: { p50At: string; p90At: string } | null,
  now: string,
): { p50: string; p90: string } {
  if (expected === null) return { p50: NOT_KNOWN, p90: NOT_KNOWN };
  const { p50At, p90At } = expected;
  if (p90At <= now) return { p50: 'its usual time is over', p90: 'its usual time is over' };
  return { p50: p50At <= now ? 'any minute' : momentWords(p50At, now), p90: momentWords(p90At, now) };
}

/** `1 h 35 min`, `late by 40 min`, or that it is not known. */
export function marginWords(minutes: number | null): string {
  if (minutes === null) return NOT_KNOWN;
  return minutes < 0 ? `late by ${minutesWords(-minutes)}` : minutesWords(minutes);
}

/** When the sets of a case must stand in theatre. */
export const lineNeedBy = ({ bucket, needByAt }: CaseLine, now: string): string =>
  bucket === 'begun' || bucket === 'over' ? 'past' : whenWords(needByAt, now);

/** The margin of a case: none where it needs no set, or is past needing any. */
export function lineMargin({ sets, bucket, marginMinutes }: CaseLine): string {
  if (bucket === 'begun' || bucket === 'over') return 'past';
  if (sets.length === 0) return bucket === 'ready' ? 'needs no set' : NOT_KNOWN;
  return marginWords(marginMinutes);
}

/** The pouches of a case by name. */
export function pouchesOf({ pouches }: CaseLine, { pouch }: ReportNames): string[] {
  const counts = new Map<string, number>();
  for (const one of pouches) counts.set(pouch(one), (counts.get(pouch(one)) ?? 0) + 1);
  return [...counts].map(([name, count]) => `${count} × ${name}`);
}

export const timesWords = ({ startsAt, endsAt }: { startsAt: string; endsAt: string }): string =>
  `${wallClock(startsAt).time}–${wallClock(endsAt).time}`;

/** Where a set on its way is, since when. */
export const whereWords = ({ set: { step, heldBecause, since } }: { set: WantedSet['set'] }, now: string) =>
  `${stepWords(step, heldBecause)}, since ${momentWords(since, now)}`;

/** For whom a wanted set is, the soonest first. */
export const forWords = ({ by }: WantedSet): string =>
  listWords(by.map(({ reference, promised }) => (promised ? `${reference} (promised)` : reference)));

/** Why a set can't simply be taken, and what that stops. */
export function lackWords({ set }: LackingSet, { now, item }: ReportNames): string[] {
  return [
    ...(set.step === 'held' || set.step === 'shortAwaitingDecision'
      ? [`${stepWords(set.step, set.heldBecause)}, since ${momentWords(set.since, now)}`]
      : []),
    ...set.stops.slice(0, 2).map((stop) => `${stopAbout(stop, now)}: ${stopWords(stop, item)}`),
    ...(set.stops.length > 2 ? [`and ${countWord(set.stops.length - 2)} more constructs`] : []),
    ...(set.mustHaveShort && set.stops.length === 0 ? ['a must-have is below its minimum'] : []),
  ];
}

/** Which cases want it, and how much. */
export function wantWords({ counting, askingForKind }: LackingSet): string {
  const parts = [
    ...(counting.length > 0
      ? [`${listWords(counting)} ${counting.length === 1 ? 'counts' : 'count'} on it`]
      : []),
    ...(askingForKind.length > 0
      ? [`${listWords(askingForKind)} ${askingForKind.length === 1 ? 'asks' : 'ask'} for its kind`]
      : []),
  ];
  return parts.join('; ');
}

/** A set between two cases: when the first ends, when it is back, when the second needs it. */
export function turnedWords(
  { first, second, firstEndsAt, backAt, needByAt }: TurnedBetween,
  now: string,
): string {
  return `After ${first}, which ends ${momentWords(firstEndsAt, now)}; back ${whenWords(backAt, now)}; ${second} needs it ${whenWords(needByAt, now)}.`;
}

export function bucketFigures(
  counts: Record<Bucket, number>,
): { key: Bucket | 'cases'; label: string; value: number }[] {
  const all = Object.values(counts).reduce((sum, count) => sum + count, 0);
  const figure = (key: Bucket) => ({ key, label: dayReportWords.figures[key], value: counts[key] });
  return [
    { key: 'cases', label: dayReportWords.figures.cases, value: all },
    ...ALWAYS_SHOWN.map(figure),
    ...SHOWN_IF_ANY.filter((key) => counts[key] > 0).map(figure),
  ];
}

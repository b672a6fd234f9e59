import type { SubjectChange, Trial, VersionWarning } from '../changes/trial';
import { wallClock } from '../theatre/localTime';
import { listWords } from './numbers';

/** What is said while a change is tried and approved. */
export const changeWords = {
  mayNotTry: (name: string) =>
    `${name} may not try this change: a theatre manager, a decontamination lead or an administrator may.`,
  notTried: (name: string) =>
    `${name} has not tried this change yet: try it first, so that what it would do has been seen.`,
  draftChanged: 'The draft was changed after it was tried: try it again.',
  basisChanged: 'What is in force changed after it was tried: try it again.',
  triedLongAgo: (minutes: number) =>
    `It was tried more than ${minutes} minutes ago, and the store has moved: try it again.`,
  notProven: 'Approving needs your password or PIN once more, with the words “I approve”.',
  noSuchChange:
    'There is nothing to try: it was approved, withdrawn or discarded meanwhile. Load the page again.',
};

/** `14 January 2026 at 07:30`. */
export function momentWords(instant: string): string {
  const { date, time } = wallClock(instant);
  const day = new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  }).format(new Date(`${date}T12:00:00Z`));
  return `${day} at ${time}`;
}

export const SUBJECT_WORDS: Record<SubjectChange['kind'], string> = {
  case: 'Case',
  start: 'Saved start',
  promise: 'Promised construct',
};

export const TURN_WORDS: Record<SubjectChange['turn'], string> = {
  worse: 'stands worse',
  better: 'stands better',
  otherwise: 'stands as well, otherwise made up',
};

export const TURN_HEADS: Record<SubjectChange['turn'], string> = {
  worse: 'Would stand worse',
  otherwise: 'Would stand as well, otherwise made up',
  better: 'Would stand better',
};

const counted = (count: number, one: string, many: string) =>
  `${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`;

/** What was looked at, and how much of it would change. */
export function lookedSentence({ looked, changed }: Trial): string {
  const { cases, unplanned, starts, promises } = looked;
  const at = listWords([
    `${counted(cases, 'booked case', 'booked cases')} with a plan`,
    counted(starts, 'saved start', 'saved starts'),
    counted(promises, 'promised construct', 'promised constructs'),
  ]);
  const without =
    unplanned > 0
      ? ` ${counted(unplanned, 'more case has', 'more cases have')} no plan yet, so nothing can be said of ${unplanned === 1 ? 'it' : 'them'}.`
      : '';
  const result =
    changed.length === 0
      ? 'Nothing differs in any of them.'
      : changed.length === 1
        ? 'One of them would stand otherwise.'
        : `${changed.length} of them would stand otherwise.`;
  return `Of ${at}: ${result.charAt(0).toLowerCase()}${result.slice(1)}${without}`;
}

export const WARNING_WORDS: Record<VersionWarning['kind'], string> = {
  mustHaveRemoved: 'Must-have taken out',
  backUpRemoved: 'Back-up taken out',
  backUpFewer: 'Fewer back-ups',
  spareFewer: 'Fewer of a must-have',
  classWeaker: 'Class weaker',
  classStronger: 'Class stronger',
  minimumLower: 'Minimum lower',
  substituteRemoved: 'Substitute taken away',
  substituteAdded: 'Substitute added',
};

export function warningTone(kind: VersionWarning['kind']): 'stop' | 'attention' | 'neutral' {
  switch (kind) {
    case 'mustHaveRemoved':
    case 'backUpRemoved':
      return 'stop';
    case 'classStronger':
    case 'substituteAdded':
      return 'neutral';
    default:
      return 'attention';
  }
}

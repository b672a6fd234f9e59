import { never } from '../identity/result';
import type { ListChange } from '../theatre/listChange';
import { dayWords, wallClock } from '../theatre/localTime';
import { actWords } from './ledger-acts';
import { listWords } from './numbers';
import { URGENCY_WORDS } from './plans';

/** What changed, in one sentence. `theatre` and `set` say what is called so by its id, `by` who did it. */
export function listChangeSentence(
  change: ListChange,
  { theatre, set }: { theatre: (id: string) => string; set: (id: string) => string },
  by: string,
): string {
  switch (change.kind) {
    case 'booked':
      return `Booked by ${by} for ${whenWords(change.startsAt)}.`;
    case 'moved': {
      const { from, to, lostSets } = change;
      const places =
        from.theatreId === to.theatreId ? '' : ` from ${theatre(from.theatreId)} to ${theatre(to.theatreId)}`;
      const times =
        from.startsAt === to.startsAt && from.endsAt === to.endsAt
          ? ''
          : from.startsAt === to.startsAt
            ? `, and ends at ${wallClock(to.endsAt).time} instead of ${wallClock(from.endsAt).time}`
            : `, from ${whenWords(from.startsAt)} to ${whenWords(to.startsAt)}`;
      const lost = lostSets.length > 0 ? ` It no longer has ${listWords(lostSets)}.` : '';
      return `Moved by ${by}${places}${times}.${lost}`;
    }
    case 'cancelled':
      return `Cancelled by ${by}: ${change.because}`;
    case 'putBack':
      return `Put back on the list by ${by}.`;
    case 'promised':
      return `${change.setCode} promised to it by ${by}.`;
    case 'urgency':
      return `Made ${URGENCY_WORDS[change.to].toLowerCase()} instead of ${URGENCY_WORDS[change.from].toLowerCase()} by ${by}.`;
    case 'freed':
      return `${by} took back the promise of ${change.setCode}.`;
    case 'planned': {
      const given = change.given.length > 0 ? [`gave it ${listWords(change.given.map(set))}`] : [];
      const taken = change.taken.length > 0 ? [`took ${listWords(change.taken.map(set))} from it`] : [];
      return `Planning the list, ${by} ${[...given, ...taken].join(' and ')}.`;
    }
    case 'planConfirmed':
      return `Version ${change.version} of its plan confirmed by ${by}.`;
    case 'other':
      return `${actWords(change.action)}, by ${by}.`;
    default:
      return never(change);
  }
}

export const listChangeWords = {
  title: (own: boolean) => (own ? 'Changed on your list' : 'Changed on the theatre list'),
  since: (moment: string | null) => (moment === null ? 'in the last seven days' : `since ${moment}`),
  more: 'There are more before these: the theatre list shows how everything stands now.',
  short: (count: number, own: boolean) =>
    `${count === 1 ? 'One thing has' : `${count} things have`} changed on ${own ? 'your list' : 'the theatre list'} since you last looked.`,
};

/** `Wednesday 14 January 08:30`. */
function whenWords(instant: string): string {
  const { date, time } = wallClock(instant);
  return `${dayWords(date)} ${time}`;
}

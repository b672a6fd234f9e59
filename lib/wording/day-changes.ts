import { never } from '../identity/result';
import { wallClock } from '../theatre/localTime';
import type { AttributedChanges, Attribution } from '../theatre/report/attribution';
import type { CaseChange, OrderChange } from '../theatre/report/changes';
import type { DayView, SeenStanding } from '../theatre/report/seen';
import { actWords } from './ledger-acts';
import { capitalised, listWords } from './numbers';
import { HELD_BECAUSE_WORDS, momentWords } from './sets';

export const dayChangesWords = {
  title: 'Changed since you looked',
  mayNotLook: (name: string) => `${name} can’t see the theatre list.`,
  notYet: 'That was not shown yet: load the page again.',
  never: 'You have not marked this day as seen yet: from then on, what changes is shown here.',
  since: (view: DayView, at: string, now: string) =>
    `since ${VIEW_WORDS[view]} as you marked it seen, ${momentWords(at, now)}`,
  nothing: 'Nothing changed.',
  mark: 'I have seen this',
  marked: 'From now on, what changes after this page was made is shown.',
  columns: { what: 'Case', change: 'What changed', by: 'Who, when and why' },
  unknown: 'no entry of the ledger: time went on',
};

const VIEW_WORDS: Record<DayView, string> = {
  morning: 'the morning report',
  dayBefore: 'the day-before report',
  theatreList: 'the theatre list',
};

/** A change as a line of a page or a sheet. */
export interface ChangeLine {
  key: string;
  /** The case, by which it is found; `null` where it is about a theatre. */
  caseId: string | null;
  about: string;
  where: string;
  word: string;
  sentence: string;
  by: string;
}

export function changeLines({ cases, orders }: AttributedChanges, now: string): ChangeLine[] {
  return [
    ...orders.map(
      (order): ChangeLine => ({
        key: `order ${order.theatre}`,
        caseId: null,
        about: order.theatre,
        where: '',
        ...orderWords(order),
        by: byWords(order.by, now),
      }),
    ),
    ...cases.map(
      (change): ChangeLine => ({
        key: `${change.caseId} ${change.what.kind}`,
        caseId: change.caseId,
        about: change.reference,
        where: `${momentWords(change.startsAt, now)}, ${change.theatre}`,
        ...changeWords(change, change.by, now),
        by: byWords(change.by, now),
      }),
    ),
  ];
}

const orderWords = ({ from, to }: OrderChange) => ({
  word: 'Order',
  sentence: `Now ${listWords(to)}; it was ${listWords(from)}.`,
});

function changeWords(
  { what }: CaseChange,
  by: Attribution | null,
  now: string,
): { word: string; sentence: string } {
  switch (what.kind) {
    case 'added':
      return by?.action === 'move-case'
        ? { word: 'Moved here', sentence: 'It was on another day.' }
        : { word: 'Added', sentence: 'It was not on the list.' };
    case 'cancelled':
      return { word: 'Cancelled', sentence: 'What was promised to it is free.' };
    case 'putBack':
      return { word: 'Put back', sentence: 'It was cancelled, and is on the list again.' };
    case 'leftDay':
      return {
        word: 'Moved away',
        sentence: `Now ${momentWords(what.to.startsAt, now)}, ${what.to.theatre}.`,
      };
    case 'moved':
      return { word: 'Moved', sentence: movedWords(what) };
    case 'plan':
      return {
        word: 'Plan',
        sentence: `${planWords(what.to)}; it was ${planWords(what.from).toLowerCase()}.`,
      };
    case 'promises':
      return { word: 'Promises', sentence: promiseWords(what) };
    case 'standing':
      return {
        word: 'Stands otherwise',
        sentence: `${capitalised(standingWords(what.to, now))}; it was ${standingWords(what.from, now)}.`,
      };
    default:
      return never(what);
  }
}

function movedWords({ from, to }: { from: Slot; to: Slot }): string {
  const times = (slot: Slot) => `${wallClock(slot.startsAt).time}–${wallClock(slot.endsAt).time}`;
  const place = from.theatre === to.theatre ? '' : `${to.theatre}, `;
  return `Now ${place}${times(to)}; it was ${place === '' ? '' : `${from.theatre}, `}${times(from)}.`;
}
type Slot = { theatre: string; startsAt: string; endsAt: string };

function planWords({ planVersion, confirmed }: { planVersion: number | null; confirmed: boolean }): string {
  if (planVersion === null) return 'Not planned';
  return confirmed ? `Confirmed in version ${planVersion}` : `A draft, version ${planVersion}, not confirmed`;
}

function promiseWords({ gained, lost }: { gained: string[]; lost: string[] }): string {
  const parts = [
    ...(gained.length > 0 ? [`${listWords(gained)} promised to it`] : []),
    ...(lost.length > 0 ? [`${listWords(lost)} no longer promised to it`] : []),
  ];
  return `${parts.join('; ')}.`;
}

function standingWords(standing: SeenStanding | null, now: string): string {
  if (standing === null) return 'not known';
  switch (standing.kind) {
    case 'waiting':
      return standing.until === null
        ? 'waiting, overdue'
        : `waiting until ${momentWords(standing.until, now)}`;
    case 'ready':
      return 'ready';
    case 'readyWith':
      return 'ready with pouches';
    case 'shortOf':
      return 'short';
    case 'noSetFree':
      return 'no set free';
    case 'notPlanned':
      return 'not planned';
    default:
      return never(standing.kind);
  }
}

/** `Case moved by Gwen Sallis, today 07:12: theatre fault`; that the newest act on a set is named is said. */
function byWords(by: Attribution | null, now: string): string {
  if (by === null) return dayChangesWords.unknown;
  const act = actWords(by.action);
  const who = by.by ?? 'the program';
  const why = by.why === null ? '' : `: ${by.why}`;
  const onSet = by.setCode === null ? '' : `the newest on ${by.setCode}: `;
  return `${onSet}${act} by ${who}, ${momentWords(by.at, now)}${why}`;
}

/** Why, as an entry of the ledger states it; `null` where it states none. */
export function whyWords(detail: unknown): string | null {
  if (typeof detail !== 'object' || detail === null) return null;
  const { because, reason } = detail as Record<string, unknown>;
  if (typeof because === 'string' && because !== '')
    return because in HELD_BECAUSE_WORDS
      ? `because ${HELD_BECAUSE_WORDS[because as keyof typeof HELD_BECAUSE_WORDS]}`
      : because;
  return typeof reason === 'string' && reason !== '' ? reason : null;
}

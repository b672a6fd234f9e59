import { never } from '../identity/result';
import { wallClock } from '../theatre/localTime';
import type { MovedSlot, Offer } from '../theatre/planning/offers';
import type { PlanChange } from '../theatre/planning/planChange';
import { timeWords } from './case-standing';
import { listWords } from './numbers';
import { momentWords } from './sets';
import { minutesWords } from './work';

export interface OfferWords {
  /** What it is, in a few words. */
  title: string;
  /** What it does for the case, and when the case is then ready. */
  does: string[];
  /** What it takes from others; empty where nobody loses anything. */
  costs: string[];
  /** The act as its button says it; `null` where no press can do it as it stands. */
  confirm: string | null;
}

interface Called {
  now: string;
  /** The case it is for. */
  reference: string;
  needBy: string;
  /** Calls a stock id by the name of its item. */
  pouch: (stockId: string) => string;
}

/** Nothing is taken from anybody. */
export const NO_COST = 'Takes nothing from other cases.';

/** A way out for a case at risk, in words. */
export function offerWords(offer: Offer, called: Called): OfferWords {
  return { ...itself(offer, called), costs: costWords(offer, called) };
}

function itself(offer: Offer, called: Called): Omit<OfferWords, 'costs'> {
  const { now, needBy, reference } = called;
  const { sets, quicker, elsewhere, moves, kind } = offer;
  const [own, other] = moves;
  switch (kind) {
    case 'otherSets':
      return {
        title: `Take ${listWords(sets)}${withPouches(offer, called)}`,
        does: [readyWords(offer, called, needBy)],
        confirm: sets.length === 1 ? 'Promise this set' : 'Promise these sets',
      };
    case 'quickerTurn': {
      if (!quicker) return impossible;
      const turn = quicker.afterCase === null ? 'Its turn' : `Its turn after ${quicker.afterCase}`;
      return {
        title: `Ask for ${quicker.set} ${minutesWords(quicker.byMinutes)} sooner`,
        does: [
          `${turn} must end by ${timeWords(quicker.wantedBy, now)}. ${quicker.halfTheTime ? 'Half of its turns are as quick.' : 'Fewer than half of its turns are as quick.'}`,
          'It comes first in what the technicians do next, and the decontamination leads are told. No set is promised by it.',
        ],
        confirm: 'Ask for it',
      };
    }
    case 'changeOrder':
      if (!own || !other) return impossible;
      return {
        title: `Change places with ${other.reference}`,
        does: [slotWords(own, now), readyWords(offer, called, needOf(own, needBy))],
        confirm: 'Change the order',
      };
    case 'laterSlot':
      if (!own) return impossible;
      return {
        title: `Begin ${minutesWords(minutesBetween(own.from, own.startsAt))} later`,
        does: [
          slotWords(own, now),
          readyWords(offer, called, needOf(own, needBy)),
          ...(offer.theatreTakenBy === null
            ? []
            : [
                `Its theatre has ${offer.theatreTakenBy} over that time: one of the two must be moved first.`,
              ]),
        ],
        confirm: offer.theatreTakenBy === null ? 'Move the case' : null,
      };
    case 'borrow':
    case 'loan': {
      if (!elsewhere) return impossible;
      const from = kind === 'borrow' ? 'another hospital' : 'a lender';
      return {
        title: `${kind === 'borrow' ? 'Borrow a set' : 'Ask for a loan set'}: ${elsewhere.missing.join('; ')}`,
        does: [
          `From ${from}, for ${reference}: in the sterile store by ${momentWords(elsewhere.neededBy, now)}, back ${momentWords(elsewhere.until, now)}. When one could be here is not known until somebody asks.`,
        ],
        confirm: null,
      };
    }
    default:
      return never(kind);
  }
}

const impossible: Omit<OfferWords, 'costs'> = { title: 'Not to be had', does: [], confirm: null };

/** What other cases lose. */
function costWords({ cost, moves, gives }: Offer, { now, reference }: Called): string[] {
  const own = gives[0]?.reference ?? reference;
  const without = cost.unserved.map((one) => `${one} would have no set.`);
  const unserved = new Set(cost.unserved);
  const others = cost.moved.filter((moved) => moved.case !== own && !unserved.has(moved.case));
  const moved = others.map(({ case: one, from, to }) =>
    to.length === 0
      ? `${one} gives up ${from} and would have no set.`
      : `${one} has ${listWords(to)} instead of ${from}.`,
  );
  const later = moves.filter((slot) => slot.reference !== own).map((slot) => slotWords(slot, now));
  return [...without, ...new Set(moved), ...later];
}

function readyWords({ ready, sets }: Offer, { now }: Called, needBy: string): string {
  if (ready === null) return 'Nobody can say when it is then ready.';
  const which = listWords(sets);
  if (ready === 'there') return `${which} ${sets.length === 1 ? 'is' : 'are'} in the sterile store now.`;
  const before = minutesBetween(ready.at, needBy);
  const when = `${which} ready ${timeWords(ready.at, now)}`;
  return before <= 0
    ? `${which} in time: ready by ${timeWords(needBy, now)}, when ${sets.length === 1 ? 'it is' : 'they are'} needed.`
    : `${when}, ${minutesWords(before)} before ${sets.length === 1 ? 'it is' : 'they are'} needed.`;
}

function withPouches({ pouches }: Offer, { pouch }: Called): string {
  if (pouches.length === 0) return '';
  const counts = new Map<string, number>();
  for (const one of pouches) counts.set(pouch(one), (counts.get(pouch(one)) ?? 0) + 1);
  return ` with ${listWords([...counts].map(([name, count]) => `${count} × ${name}`))}`;
}

/** `LM-26-7K2P begins 10:35 instead of 10:00.` */
function slotWords({ reference, from, startsAt }: MovedSlot, now: string): string {
  const sameDay = wallClock(from).date === wallClock(startsAt).date;
  const before = sameDay ? wallClock(from).time : timeWords(from, now);
  return `${reference} begins ${timeWords(startsAt, now)} instead of ${before}.`;
}

const needOf = (own: MovedSlot, needBy: string) =>
  new Date(Date.parse(needBy) + Date.parse(own.startsAt) - Date.parse(own.from)).toISOString();
const minutesBetween = (from: string, to: string) => Math.floor((Date.parse(to) - Date.parse(from)) / 60_000);

/** What can be wrong as a way out is taken. */
export const wayOutWords = {
  stale: (reference: string) =>
    `The list changed since this was worked out for ${reference}. Nothing was done: below is what can be done now.`,
  byRequest: 'A set from elsewhere is asked for by a loan request.',
  overtaken: 'The list changed while this was being done. Nothing was done.',
  theatreTaken: (theatre: string, reference: string) =>
    `${theatre} has case ${reference} over the new time. Nothing was done.`,
  held: (set: string) => `${set} is held. Nothing was done.`,
  wouldLose: (reference: string, sets: readonly string[]) =>
    `${reference} could not keep ${listWords(sets)} at its new time. Nothing was done.`,
  mayNotTakeFromOthers: (name: string) =>
    `${name} can’t take a set away that somebody promised to another case: a theatre manager, a scrub practitioner or a decontamination lead can.`,
  mayNotHasten: (name: string) =>
    `${name} can’t ask for a quicker turn: a theatre manager, a scrub practitioner or a decontamination lead can.`,
  done: (reference: string, title: string) =>
    `${reference}: ${title.charAt(0).toLowerCase()}${title.slice(1)}.`,
  wanted: (by: string, reference: string, person: string) =>
    `Wanted ${by} for ${reference}, asked for by ${person}`,
};

/** What planning anew changed after the list was changed; `null`: it did not work. */
export function plannedAnewWords(change: PlanChange | null): string {
  if (change === null)
    return 'The list is changed, but planning anew did not work: look at the cases at risk.';
  const { gained, changed, without } = change;
  const said = [
    ...(without.length === 0
      ? []
      : [`${listWords(without)} ${without.length === 1 ? 'has' : 'have'} no set any more`]),
    ...(changed.length === 0
      ? []
      : [`${listWords(changed)} ${changed.length === 1 ? 'has' : 'have'} other sets`]),
    ...(gained.length === 0 ? [] : [`${listWords(gained)} ${gained.length === 1 ? 'has' : 'have'} sets now`]),
  ];
  return said.length === 0 ? 'No other promise had to move.' : `${said.join('; ')}.`;
}

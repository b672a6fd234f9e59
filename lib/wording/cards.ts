import { never } from '../identity/result';
import type { CardChange } from '../plans/compareCards';
import type { StartUseFigures } from '../plans/startUse';
import type { ChangeWords } from './planChanges';

export const cardWords = {
  startTwice: 'This saved start is on the card already.',
  extraTwice: 'This item is on the card already: change its quantity instead.',
  empty: 'The card asks for nothing yet: name a saved start, an item, or write a note.',
  mayNot: (name: string) => `${name} can’t keep preference cards: a surgeon keeps their own.`,
  mayNotRetire: (name: string) => `${name} can’t retire this card: its surgeon or a theatre manager can.`,
  noSuchCard: 'There is no such preference card.',
  notYours: 'That card is another surgeon’s.',
  noSuchProcedure: 'No such procedure: choose one of the list.',
  procedureWithdrawn: (name: string) => `“${name}” is no longer on the hospital’s list.`,
  cardThere: (name: string) => `You have a card for ${name} already: change that one.`,
  otherInUse: (name: string) => `Another card for ${name} is in use: retire that one first.`,
  retired: 'This card is retired. Bring it back before you change it.',
  changed: 'Somebody saved another version of this card meanwhile: look at it first.',
  noSuchStart: 'No such saved start.',
  startRetired: (name: string) => `“${name}” is retired.`,
  startOther: (name: string) => `“${name}” is for another region than the procedure.`,
  noSuchItem: 'No such item in the catalogue.',
  itemGone: (name: string, status: string) => `${name} is ${status}.`,
  neverExtra: (name: string) =>
    `${name} is no instrument and no consumable: implants are stated in the plan.`,
  retiredForCase: 'That card is retired: choose another, or none.',
  cardOfAnother: 'That card belongs to another surgeon than the one who operates.',
  cardOfOtherRegion: 'That card is for another region.',

  notAsked: 'Asked for by the preference card; what is not there holds nothing up.',
};

export const startWords = {
  mayNot: (name: string) => `${name} can’t keep starts for plans.`,
  mayNotRetire: (name: string) => `${name} can’t retire this start: its owner or a theatre manager can.`,
  unknown: 'You have no such start; it may be somebody else’s.',
  noSuch: 'There is no such saved start.',
  retired: 'This start is retired. Bring it back before you change it.',
  changed: 'Somebody saved another version of this start meanwhile: look at it first.',
  retiredForCase: (name: string) => `“${name}” is retired: choose another start.`,
};

export const procedureWords = {
  mayNot: (name: string) => `${name} can’t change the list of procedures: a theatre manager can.`,
  noSuch: 'There is no such procedure.',
  taken: (name: string) => `“${name}” is on the list already.`,
  changed: (name: string) => `Somebody changed “${name}” meanwhile.`,
  inUse: (name: string, cards: number) =>
    `${cards === 1 ? 'One preference card is' : `${cards} preference cards are`} for “${name}”, so its region stays.`,
};

/** One change of a card: what it is about, and both values in words. */
export function cardChangeWords(
  change: CardChange,
  names: { item: (id: string) => string; start: (id: string) => string },
): ChangeWords {
  switch (change.kind) {
    case 'startAdded':
      return { about: 'Saved start', before: null, after: names.start(change.startId) };
    case 'startRemoved':
      return { about: 'Saved start', before: names.start(change.startId), after: null };
    case 'extraAdded':
      return {
        about: names.item(change.extra.itemId),
        before: null,
        after: extraWords(change.extra),
      };
    case 'extraRemoved':
      return {
        about: names.item(change.extra.itemId),
        before: extraWords(change.extra),
        after: null,
      };
    case 'quantity':
      return {
        about: `${names.item(change.itemId)}, quantity`,
        before: String(change.before),
        after: String(change.after),
      };
    case 'extraNote':
      return {
        about: `${names.item(change.itemId)}, note`,
        before: change.before ?? 'none',
        after: change.after ?? 'none',
      };
    case 'note':
      return { about: 'Note', before: change.before ?? 'none', after: change.after ?? 'none' };
    default:
      return never(change);
  }
}

const extraWords = ({ quantity, note }: { quantity: number; note: string | null }) =>
  note === null ? `${quantity} ×` : `${quantity} ×, ${note}`;

/** `Used in 4 cases; of the 3 with a confirmed plan 2 were changed.` */
export function startUseSentence({ used, confirmed, changed }: StartUseFigures): string {
  if (used === 0) return 'No case has begun from it yet.';
  const begun = `${used === 1 ? 'One case' : `${used} cases`} began from it`;
  if (confirmed === 0) return `${begun}; none has a confirmed plan yet.`;
  if (used === 1) return `${begun}; its plan is confirmed, and was ${changed === 0 ? 'not ' : ''}changed.`;
  const of =
    confirmed === used
      ? 'all have a confirmed plan'
      : `${confirmed} of them ${confirmed === 1 ? 'has' : 'have'} a confirmed plan`;
  return `${begun}; ${of}, and ${changed === 0 ? 'none was' : `${changed} of ${confirmed} ${changed === 1 ? 'was' : 'were'}`} changed.`;
}

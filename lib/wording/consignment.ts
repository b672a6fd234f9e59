import type { UsageOutcome } from '../consignment/outcome';
import type { UsageOrderState } from '../consignment/state';
import type { KnownBy } from '../consignment/waiting';

export const USAGE_OUTCOME_WORDS: Record<UsageOutcome | 'setAside', string> = {
  implanted: 'Implanted',
  openedNotImplanted: 'Opened, not implanted',
  droppedOrDamaged: 'Dropped or damaged',
  pastUseBy: 'Past use-by',
  notFound: 'Not found',
  foundAgain: 'Found again',
  setAside: 'Put aside as unfit',
};

export const KNOWN_BY_WORDS: Record<KnownBy, string> = {
  heap: 'from their shelf',
  lotRead: 'lot read at the table',
  othersTooFew: 'nothing else lay in that slot',
};

export const USAGE_ORDER_STATE_WORDS: Record<UsageOrderState, string> = {
  made: 'Made, not approved',
  approved: 'Approved, not sent',
  sent: 'Sent',
  withdrawn: 'Withdrawn',
};

const pieces = (count: number) => (count === 1 ? 'one piece' : `${count} pieces`);

/** `one to three of 4`, `2 of 4`, `none or one of 1`: what of so many pieces may be theirs. */
export function shareWords(lo: number, hi: number, of: number): string {
  if (lo === hi) return `${lo} of ${of}`;
  return `${lo}–${hi} of ${of}`;
}

/** What acts on consigned stock and usage orders say when they are refused. */
export const consignmentWords = {
  mayNotState: (name: string) =>
    `${name} can’t state whose stock it is: the stock keeper or the theatre manager does.`,
  mayNotMake: (name: string) =>
    `${name} can’t make usage orders: the stock keeper or the theatre manager does.`,
  mayNotApprove: (name: string) => `${name} can’t approve usage orders: the theatre manager does.`,
  noSuchOwner: 'There is no such owner on record.',
  ownerOut: (name: string) => `${name} is out of use: bring it back into use, or choose another.`,
  nothingOfIt: 'Nothing of that lot is on consignment as you saw it: look at it again.',
  toldAlready: (owner: string) =>
    `A usage order has told ${owner} of pieces of that lot: withdraw it first, or leave it as it is.`,
  noSuchOrder: 'There is no such usage order.',
  idTaken: 'Another usage order was made under this id. Nothing was saved: make it again.',
  madeAlready: (number: string) => `${number} is made and not approved yet: approve it or withdraw it first.`,
  nothingWaits: 'Nothing waits for a usage order.',
  moreWaits: (seen: number, now: number) =>
    `You saw ${seen} ${seen === 1 ? 'line' : 'lines'}, and there are ${now} now: look at them again.`,
  changed: (number: string) => `${number} was changed meanwhile: look at it as it is now.`,
  notMade: (number: string) => `${number} is approved or over: its lines stay as they are.`,
  noSuchLine: 'There is no such line here.',
  takesBack: 'This line takes back: nothing is replaced for it.',
  notChosen: (count: number) =>
    `Of ${count === 1 ? 'one line' : `${count} lines`} nobody has said whether to replace it.`,
  correctedSince: (number: string, count: number) =>
    `${count === 1 ? 'One line' : `${count} lines`} of ${number} came of a record of use that was corrected since: withdraw it and make it again.`,
  notApproved: (number: string) => `${number} is not approved: only what is approved is sent.`,
  sentAlready: (number: string) => `${number} was sent, and stays.`,
  takenBackLater: (number: string) =>
    `A later usage order takes lines of ${number} back: withdraw that one first.`,
  notSent: (number: string) => `${number} is not sent: nothing is expected of it yet.`,
  settledAlready: (number: string) => `Nothing more is expected of ${number} already.`,
};

/** The words of the screens. */
export const consignmentScreens = {
  waits: (count: number, lines: number) =>
    count === 0 && lines === 0
      ? 'nothing waits'
      : `${pieces(count)} on ${lines === 1 ? 'one line' : `${lines} lines`}`,
  pieces,
  made: (number: string) => `${number} is made. Say line by line what is to be replaced.`,
};

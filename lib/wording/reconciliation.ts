import type { Explanation } from '../consignment/reconcile';

export const HOW_WORDS: Record<'list' | 'count', string> = {
  list: 'the owner’s list',
  count: 'counted here',
};

export const EXPLANATION_WORDS: Record<Explanation['kind'], string> = {
  usedNotTold: 'used, on no usage order yet',
  orderNotSent: 'on a usage order that is not sent',
  orderSentLater: 'on a usage order sent after the list',
  sentBackLater: 'sent back after the list',
  receivedLater: 'received after the list',
};

/** `+2`, `−1`, `0`: what the owner says over what is here. */
export const signed = (pieces: number): string =>
  pieces > 0 ? `+${pieces}` : pieces < 0 ? `−${-pieces}` : '0';

/** `+2 used, on no usage order yet; −1 received after the list`. */
export const explanationWords = (explained: readonly Explanation[]): string =>
  explained.map(({ kind, pieces }) => `${signed(pieces)} ${EXPLANATION_WORDS[kind]}`).join('; ');

/** Why nobody can tell: pieces of it went into slots, where lots are not kept apart. */
export const slotsWords = (inSlots: number): string =>
  inSlots === 0
    ? ''
    : `Up to ${inSlots === 1 ? 'one piece' : `${inSlots} pieces`} of it went into slots of sets: whether they lie there or were used unread, nobody knows.`;

/** What acts on reconciliations say when they are refused. */
export const reconciliationWords = {
  mayNot: (name: string) =>
    `${name} can’t reconcile consigned stock: the stock keeper or the theatre manager does.`,
  idTaken: 'Another reconciliation was entered under this id. Nothing was saved: enter it again.',
  noSuchOwner: 'There is no such owner on record.',
  noSuch: 'There is no such reconciliation.',
  noSuchLine: 'There is no such line here.',
  inTheFuture: 'A list can’t speak of a day to come.',
  isExplained: 'What is on record explains it: no reason is needed.',
  closed: (number: string) => `${number} is closed, and stays.`,
  changed: (number: string) => `${number} was changed meanwhile: look at it as it is now.`,
  secondIsSame: 'The second person is somebody else.',
  proveFirst: 'Prove who you are first.',
  reasonsLacking: (count: number) =>
    `Of ${count === 1 ? 'one difference' : `${count} differences`} nothing explains nobody has written why it is there.`,
  needsTwo: (count: number) =>
    `${count === 1 ? 'One difference stays' : `${count} differences stay`} unexplained: a second person closes it with you.`,
};

/** The words of its paper. */
export const reconciliationPaper = {
  facts: {
    owner: 'Owner',
    by: 'By',
    of: 'Of',
    entered: 'Entered',
    closed: 'Closed',
    lots: 'Lots',
    unexplained: 'Unexplained',
  },
  open: 'not closed',
  closedBy: (moment: string, one: string, other: string | null) =>
    `${moment}, ${one}${other === null ? '' : ` with ${other}`}`,
  unexplainedHead: 'Unexplained',
  explainedHead: 'Explained by the record',
  sameHead: 'The same',
  noReason: 'no reason written yet',
  columns: {
    code: 'Code',
    name: 'Item',
    lot: 'Lot',
    owner: 'Owner says',
    shelf: 'Shelf',
    cases: 'Cases',
    slots: 'Slots',
    difference: 'Differs',
    why: 'Why',
  },
  notListed: '–',
  noLot: 'not stated',
  listOnly: 'The owner’s list is set beside shelf, cases and slots together.',
  countOnly: 'What was counted is set beside the shelf alone.',
  signed: { hospital: 'For the hospital', owner: 'For the owner' },
};

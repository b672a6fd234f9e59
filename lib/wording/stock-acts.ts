import { listWords } from './numbers';

const lotWords = (lot: string | null): string => (lot === null ? 'no lot stated' : `lot ${lot}`);

/** What can be wrong with receiving a delivery, and the way out. */
export const deliveryWords = {
  mayNot: (name: string) => `${name} can’t receive deliveries.`,
  idTaken: 'Another delivery was entered under this id. Nothing was saved: enter it again.',
  noSuchItem: 'There is no such item in the catalogue.',
  notCurrent: (name: string, status: 'withdrawn' | 'recalled') =>
    `${name} is ${status}: it is not received. Put it aside, and send it back.`,
  placeNeeded: 'Choose a place that is in use.',
  noSuchOwner: 'Choose an owner that is on record, or say that the note does not state it.',
  oursHasNoOwner: 'What is ours has no other owner.',
  lotRecalled: (name: string, lot: string | null) =>
    `${lot === null ? name : `Lot ${lot} of ${name}`} is under a recall: it is not received. Put it aside, and tell the incident lead.`,
  pastOnArrival: (name: string, useBy: string, on: string) =>
    `${name} is past its use-by (${useBy}) on arrival (${on}). Send it back, or receive it as held.`,
  otherUseBy: (lot: string, useBy: string | null) =>
    `Lot ${lot} is on record ${useBy === null ? 'with no use-by' : `with use-by ${useBy}`}. Read the pack again, and say that you did.`,
  inTheFuture: 'It can’t have arrived on a day to come.',
  already: (supplier: string, reference: string, when: string) =>
    `Delivery ${reference} of ${supplier} was received before (${when}). Look there first; another delivery has another number.`,
  received: (lines: number, pieces: number) =>
    `${lines === 1 ? 'One line' : `${lines} lines`}, ${pieces === 1 ? 'one piece' : `${pieces} pieces`} put on their shelves.`,
};

/** What the screen of a delivery offers beside what the packs say. */
export const receiveWords = {
  orderHint: 'Only if this is what was ordered: the order then shows it as come.',
  order: ({ number, toCome, expectedOn }: { number: string; toCome: number; expectedOn: string | null }) =>
    `${number}: ${toCome} still to come${expectedOn === null ? '' : `, expected ${expectedOn}`}`,
};

/** What can be wrong with what is done to a heap, and the way out. */
export const heapWords = {
  mayNot: (name: string, what: string) => `${name} can’t ${what}.`,
  noSuchHeap: 'There is no such heap on the shelves.',
  changed: 'Somebody changed this heap meanwhile. Nothing was saved: look at it as it is now.',
  countedNow: 'It is being counted by you without seeing the record. Close that count first.',
  wholePieces: 'State whole pieces, at least one.',
  tooMany: (free: number) =>
    free === 0
      ? 'No piece here is free: all of it lies with kits or travels with sets.'
      : `Only ${free === 1 ? 'one piece is' : `${free} pieces are`} free here: the rest lies with kits or travels with sets.`,
  labelled: (numbers: readonly string[]) =>
    `These pouches carry labels (${listWords(numbers)}): act on the whole heap, or scan the one in its new place.`,
  samePlace: (name: string) => `It lies in ${name} already.`,
  placeNeeded: 'Choose a place that is in use.',
  noteNeeded: 'Say how it came about, in a few words.',
  notPast: (useBy: string | null) =>
    useBy === null
      ? 'No use-by is stated, so it is not past one.'
      : `Its use-by is ${useBy}: it is not past it yet. Choose another reason.`,
  heldAlready: 'It is held already.',
  notHeld: 'It is not held.',
  reasonNeeded: 'Say why it may be used again.',
  proveFirst: 'Prove who you are first: a hold is let go by a person who stands for it.',
  underRecall: (number: string) =>
    `Held for recall ${number}, which is open: it is let go after that is closed.`,
  holdStays: (reason: string) =>
    `Held, because ${reason}: this hold is not let go here. It ends where its reason does, with the load.`,
};

/** What can be wrong with a count of the shelves, and the way out. */
export const stockCountWords = {
  mayNot: (name: string, what: string) => `${name} can’t ${what}.`,
  noSuchCount: 'There is no such count.',
  noSuchLine: 'There is no such line in this count.',
  idTaken: 'Another figure was entered under this id. Enter it again.',
  unknownSession: 'It can’t be told who counted this. Sign in and count it again.',
  placeNeeded: 'Choose a place that is in use.',
  nothingToCount: (place: string) =>
    `There is nothing to count in ${place}: nothing of this class is due, or somebody is counting it now.`,
  notYours: (name: string) => `${name} counts here. Figures are one person’s own.`,
  notOpen: 'This count has ended: no more figures are taken.',
  touchedSince: (name: string, lot: string | null) =>
    `${name} (${lotWords(lot)}): pieces came or went after you counted, so that figure is not taken. Count this heap again.`,
  notListed: 'This line is not counted again.',
  addedFirstOnly: 'Something else that lies there is entered at the first count only.',
  nothingCounted: 'Count at least one line before you close the count.',
  sameCounter: (name: string) => `${name} counted it the first time: another person counts again.`,
  notToRecount: 'Nothing here is to be counted again now.',
  recountAll: (left: number) =>
    `${left === 1 ? 'One line has' : `${left} lines have`} no figure yet: count it again before you close.`,
  notToDecide: 'There is no difference to decide here now.',
  counterDecides: (name: string) => `${name} counted here: another person decides about the differences.`,
  becauseNeeded: 'Say why the difference is left as it is.',
  changedSince: (lot: string | null) =>
    `This heap (${lotWords(lot)}) was corrected after it was counted. Leave this difference, and count it again.`,
  goneSince: 'Fewer pieces are free here now than were not found. Leave this difference, and count it again.',
  changed: 'Somebody else acted on this count meanwhile. Nothing was saved: look at it as it is now.',
};

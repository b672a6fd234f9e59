import { listWords } from './numbers';

/** What the rules of each list say of a row, and the way out. */
export const exchangeRules = {
  twice: (what: string, rows: readonly number[]) =>
    `${what} stands in rows ${listWords(rows)}: keep one of them.`,
  noKind: 'Say what kind of item it is: without it nothing else can be read.',
  otherKind: (is: string) =>
    `It is a ${is} here, and an item keeps its kind: add another item, and withdraw this one.`,
  notOfKind: (kind: string, heading: string) => `A ${kind} has no “${heading}”: leave the cell empty.`,
  flagNeeded: 'Write yes or no.',
  makerUnknown: (name: string) =>
    `No maker here is called ${name}: write one that is here, or say that it is new.`,
  gtinTaken: (code: string) => `${code} has this GTIN already.`,
  takesForm: 'Write each as its form and millimetres: hexagonal shank 6.5; wire 2.',
  noSuchItem: (code: string) =>
    `No item has the code ${code}: bring in the catalogue first, or put the code right.`,
  noSuchGtin: (gtin: string) =>
    `No item has the GTIN ${gtin}: bring in the catalogue first, or put it right.`,
  codeAndGtin: (code: string, gtin: string) =>
    `${code} does not have the GTIN ${gtin}: one of them is wrong.`,
  itemNeeded: 'State the code of the item, or its GTIN.',
  notAPlate: (code: string) => `${code} is no plate: only plates have holes.`,
  noSuchPlace: (name: string) =>
    `No place in use is called ${name}: add it under Places, or put the name right.`,
  nameLength: 'A name has 2 to 80 characters.',
  hasLeft: (name: string) => `${name} worked here before and has left: let them return under People.`,
  lastAdministrator: 'One administrator must remain: nobody could name another.',
  setCode: (configuration: string) =>
    `A set of it is called ${configuration}-01, ${configuration}-02 and so on.`,
  noSuchConfiguration: (code: string) =>
    `No configuration has the code ${code}: bring in the configurations first, or put it right.`,
  notInForce: (code: string) =>
    `No version of ${code} is in force: a second person approves its draft first.`,
  configurationOut: (code: string) => `${code} is out of use: no new sets are made of it.`,
  configurationOnLoan: (code: string) => `${code} was made of a lender’s list: it is not ours to change.`,
  otherConfiguration: (is: string) => `This set is of ${is} here, and a set keeps its configuration.`,
  onLoan: 'This set is on loan: it comes and goes by its loan.',
  isElsewhere: (place: string) => `It is recorded in ${place}: a list moves no set. Move it where it stands.`,
  configurationCode: 'Two to eight capitals or digits.',
  configurationName: 'State the name: the code is new.',
  namesDiffer: (names: readonly string[]) =>
    `Rows of one configuration name it differently: ${listWords(names)}.`,
  keepsName: (name: string) => `It is called ${name} here and keeps that name.`,
  layerNames: (layer: number, names: readonly string[]) =>
    `Layer ${layer} is named differently: ${listWords(names)}.`,
  slotTwice: (rows: readonly number[]) => `Rows ${listWords(rows)} lie in the same layer, row and slot.`,
  waits: (version: number, from: string) =>
    `Version ${version} is approved and waits for ${from}: a next one is begun after that.`,
  outOfBounds: (from: number, to: number) => `A whole number from ${from} to ${to}.`,
  draftOpen: (name: string | null) =>
    `A draft is open${name === null ? '' : `, last saved by ${name}`}: its lines are replaced by these.`,
  becomesDraft: 'Becomes a draft: a second person approves it.',
  lotRecalled: (lot: string | null) =>
    `${lot === null ? 'This item' : `Lot ${lot}`} is under a recall: put it aside, and tell the incident lead.`,
  newHeap: 'No such heap is on record: these pieces are entered as found.',
  heldNotHere:
    'No held heap like this is on record: bring it in as a delivery that is held, or hold it where it lies.',
  pouchNotHere: 'Pouches come onto the shelf as they are packed and accepted, not by a list.',
  severalHeaps: 'Several heaps on record are like this: correct them on their screens.',
  countedNow: 'You are counting it blind: close that count first.',
  reasonNeeded: 'Say why the record is corrected: some figures are higher or lower than it says.',
  noteNeeded: 'Say how it came about, in a few words.',
  deliveryDiffers: (reference: string) =>
    `Delivery ${reference} was received before with other lines: it stays as it was received. Another delivery has another number.`,
  deliveryTooLong: (reference: string, most: number) =>
    `Delivery ${reference} has more than ${most} lines: divide it in two notes.`,
  arrivedDiffers: (reference: string) => `Rows of delivery ${reference} say it arrived on different days.`,
};

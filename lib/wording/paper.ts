import type { SheetKind } from '../documents/sheet';
import type { KitRole } from '../kits/kit';
import type { MustHaveClass } from '../sets/configuration';

/** The words that only stand on paper. */

export const SHEET_WORDS: Record<SheetKind, string> = {
  countSheet: 'Count sheet',
  pickList: 'Pick list',
  layUpCard: 'Lay-up card',
  loadList: 'Load list',
  loadInDoubt: 'Load in doubt',
  recall: 'Recall',
  morningReport: 'Morning report',
  dayBeforeReport: 'Day-before report',
  loanRequest: 'Request for a loan',
  supplyOrder: 'Order',
  usageOrder: 'Usage order',
  reconciliation: 'Reconciliation',
  loanReturn: 'Return note',
  preferenceCard: 'Preference card',
  recordOfUse: 'Record of use',
};

export const ROLE_WORDS: Record<KitRole, string> = { open: 'open', hold: 'hold unopened' };

/** Short words for the rows of a count sheet; the legend has them in full. */
export const CLASS_SHORT_WORDS: Record<MustHaveClass, string> = {
  1: 'stops the step',
  2: 'stops it unless substituted',
  3: 'back-up',
  4: 'convenience',
};

export const countSheetWords = {
  columns: {
    place: 'Row · slot',
    drawing: 'Drawing',
    item: 'Item',
    mustHaveClass: 'Class',
    expected: 'Expected',
    before: 'Before',
    added: 'Added',
    after: 'After',
    unsound: 'Unsound: what, how many',
  },
  layer: (layer: number, name: string) => `Layer ${layer}: ${name}`,
  layerUnnamed: (layer: number) => `Layer ${layer}`,
  layerNote: (lines: number, pieces: number) =>
    `${lines} ${lines === 1 ? 'line' : 'lines'}, ${pieces} ${pieces === 1 ? 'piece' : 'pieces'} expected`,
  tableCaption: (layer: number) => `Layer ${layer}: what is expected, and what is counted`,
  rackCaption: (name: string) => `${name}: screws by length`,
  minimum: (minimum: number) => `min ${minimum}`,
  parts: (parts: number) => `each of ${parts} parts, every part counted`,
  substitutes: (names: string) => `substitute: ${names}`,
  legendTitle: 'Must-have classes',
  howTo:
    'Count what lies there; write a figure in every cell, 0 included. Count a layer whole. Unsound pieces are put aside, noted, and not counted as found.',
  foreign: 'Pieces that belong to no line of this set',
  foreignNote: 'the set is not complete until each has found its home',
  foreignColumns: { what: 'What it is, and its markings', howMany: 'How many', home: 'Where its home is' },
  rackUnsound: 'Unsound in this rack: which, what, how many',
  mass: 'Mass',
  massExpected: (mass: string) => `As configured, with basket and container: ${mass}.`,
  massAtLeast: (mass: string, unknown: string) =>
    `As configured, with basket and container: at least ${mass}; no mass is stated for ${unknown}.`,
  massLimits: (limits: string) => `Limits here: ${limits}.`,
  massColumns: { weighed: 'Weighed, in kg', scale: 'On which scale', by: 'By' },
  signatures: 'Signatures',
  signed: {
    counted: 'Counted by',
    checked: 'Checked by',
    before: 'Before the case',
    after: 'After the case',
  },
  blind: 'another person, without sight of the first figures',
  shortWord: 'SHORT',
  shortLine: (name: string, place: string, found: number, expected: number, words: string) =>
    `${name} (${place}): ${found} of ${expected} at the last count; ${words}.`,
  stops: (about: string, what: string) => `${about}: ${what}.`,
  forCaseOnly: (reference: string) => `It goes for case ${reference} and no other.`,
  notCountedWord: 'NOT COUNTED',
  notCounted: (lines: number) =>
    `${lines} ${lines === 1 ? 'line has' : 'lines have'} no count on file; nothing is known of ${lines === 1 ? 'it' : 'them'}.`,
  foreignLine: (quantity: number, name: string) => `${quantity} × ${name} belongs to no line of this set.`,
  heldWord: 'HELD',
  openQuestionWord: 'OPEN QUESTION',
  openQuestion: (question: string, reference: string) =>
    `${question}, at a count in theatre for ${reference}.`,
  draftWord: 'DRAFT',
  draftVersion: 'This version of the configuration is a draft: it is not in force.',
};

export const kitSheetWords = {
  when: (day: string, from: string, to: string) => `${day}, ${from} to ${to}`,
  facts: {
    when: 'When',
    theatre: 'Theatre',
    region: 'Region and side',
    surgeon: 'Surgeon',
    urgency: 'Urgency',
    plan: 'Plan',
    confirmedBy: 'Confirmed by',
    list: 'By the list',
    take: 'To take',
    cover: 'Length cover',
  },
  listMade: (when: string, by: string | null) =>
    `worked out ${when}${by === null ? '' : ` by ${by}`}, as it is fetched`,
  planVersion: (version: number, status: string) => `version ${version}, ${status}`,
  cover: (percent: string) => `${percent}, all lengths at once`,
  notEstablished: 'not established',
  shortWord: 'SHORT',
  planWord: 'PLAN STOPPED',
  unknownWord: 'NOT ESTABLISHED',
  waitWord: 'NOT YET IN STORE',
  draftWord: 'DRAFT PLAN',
  cautionWord: 'WITH A CAUTION',
  backUpWord: 'NO BACK-UP',
  draft: 'The surgeon has not confirmed this plan: nothing is final.',
  newerDraft: (version: number) =>
    `Version ${version} of the plan is being written; this sheet follows the confirmed one.`,
  short: (name: string, sentence: string) => `${name}. ${sentence}`,
  elsewhere: (places: string) => `Not to be had for this case: ${places}.`,
  mightServe: (steps: string, missing: string) =>
    `${steps}: something in store might serve, but a value is missing, so it is not counted as a fit. ${missing}`,
  carriesCaution: (steps: string, cautions: string) =>
    `${steps}: what is in store fits, but carries a caution. ${cautions}`,
  lot: (lot: string | null) => (lot === null ? 'lot not stated' : `lot ${lot}`),
  useBy: (date: string | null) => (date === null ? 'use-by not stated' : `use-by ${date}`),
  placeNotStated: 'place not stated',
  form: { pouch: 'pouch', sterilePacked: 'sterile pack' },
  consignment: 'consignment',
};

export const pickListWords = {
  fetch: 'Fetch',
  fetchNote: 'in the order of the walk from the pick bench',
  fetchCaption: 'Sets and packs to fetch, in the order of the walk',
  nothing: 'Nothing in store serves this plan.',
  columns: {
    tick: 'Done',
    place: 'Place',
    take: 'Take',
    what: 'What it is',
    role: 'Open or hold',
    useBy: 'Use-by',
    initials: 'Initials',
    quantity: 'Quantity',
    drawing: 'Drawing',
    item: 'Item, and what it is for',
    source: 'From',
    next: 'Role; where the next one is',
  },
  metres: (metres: number) => `${metres} m`,
  forSteps: (slot: string, steps: string) => (steps === '' ? slot : `${slot} for ${steps}`),
  readyAt: (moment: string) => `back at ${moment}`,
  promisedTo: (references: string) => `promised to ${references}`,
  next: (sources: string) => `next: ${sources}`,
  noNext: 'no other in store',
  more: (count: number) => `and ${count} more`,
  phaseCaption: (phase: string) => `${phase}: what to pick`,
  stepsNote: (steps: string) => `for ${steps}`,
  handed: 'Handed over',
  signed: {
    picked: 'Picked by',
    checked: 'Checked by',
    handed: 'Handed to theatre by',
    taken: 'Taken over by',
  },
  checkedNote: 'another person, against this list',
};

export const layUpWords = {
  plateTitle: (key: string, name: string) => `${key}: ${name}`,
  plateCaption: (name: string, principle: string | null) =>
    `${name}${principle === null ? '' : `, ${principle}`}; the fracture zone is between the broken lines`,
  plateCaptionNoZone: (name: string, principle: string | null) =>
    `${name}${principle === null ? '' : `, ${principle}`}; no fracture zone is marked`,
  plateAlt: (name: string, holes: string) => `${name} seen from above with the id of each hole. ${holes}`,
  zone: 'fracture zone',
  construct: 'The construct',
  order: 'Order of use',
  columns: {
    number: 'No.',
    use: 'Use',
    drawing: 'Drawing',
    from: 'From',
    hole: 'Hole',
    fill: 'What goes in',
    screw: 'Screw laid up',
  },
  holesCaption: (plate: string) => `Holes of ${plate}, and what goes in each`,
  freeScrews: 'Screws outside a plate',
  leftOpen: (holes: string) => `Not decided in the plan: ${holes}.`,
  leftEmpty: (holes: string) => `Left empty: ${holes}.`,
  none: 'none laid up',
  phaseCaption: (phase: string) => `${phase}: in the order of use`,
  times: (quantity: number) => `${quantity} ×`,
  hold: 'Hold unopened',
  holdCaption: 'Sets and packs in theatre that stay closed',
  laidUp: 'Laid up by',
  countedBefore: 'Counted before the case by',
};

/** Instead of a sheet that can't be printed: what is wrong, and the way out. */
export const noSheetWords = {
  blindUse: (codes: readonly string[], href: string) => ({
    title: 'Not while you check blind',
    sentence: `You are counting ${codes.join(', ')} without seeing what anybody found. Close your count first, then the record is printed whole.`,
    link: { href, words: 'Go to the case' },
  }),
  noCase: {
    title: 'No such case',
    sentence: 'There is no case under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/cases', words: 'Go to the cases' },
  },
  noSet: {
    title: 'No such set',
    sentence: 'There is no set under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/sets', words: 'Go to the sets' },
  },
  noLoad: {
    title: 'No such load',
    sentence: 'There is no load under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/loads', words: 'Go to the loads' },
  },
  noOrder: {
    title: 'No such order',
    sentence:
      'There is no order under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/restock/orders', words: 'Go to the orders' },
  },
  noReconciliation: {
    title: 'No such reconciliation',
    sentence:
      'There is no reconciliation under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/consignment', words: 'Go to consignment' },
  },
  noUsageOrder: {
    title: 'No such usage order',
    sentence:
      'There is no usage order under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/consignment', words: 'Go to consignment' },
  },
  noLoan: {
    title: 'No such loan',
    sentence: 'There is no loan under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/loans', words: 'Go to the loans' },
  },
  noCard: {
    title: 'No such preference card',
    sentence: 'There is no card under this address, so there is nothing to print. It may have been mistyped.',
    link: { href: '/plans', words: 'Go to the cards' },
  },
  notFailed: {
    title: 'Nothing is in doubt',
    sentence:
      'Only a rejected load puts others in doubt. This one was not rejected, or there is no such load.',
    link: { href: '/loads', words: 'Go to the loads' },
  },
  noPlan: (reference: string, id: string) => ({
    title: `Nothing is planned for ${reference} yet`,
    sentence: 'A pick list and a lay-up card follow from the surgeon’s plan. State it first, then print.',
    link: { href: `/cases/${id}/plan`, words: 'Plan this case' },
  }),
};

export const itemWarningWords = {
  lookAlike: 'has look-alikes: two people refill it',
  sided: 'two people refill it',
};

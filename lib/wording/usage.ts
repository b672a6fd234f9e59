import { never } from '../identity/result';
import { writeMm } from '../quantities/length';
import type { actFaults, DelayStep, LostStep, OpeningBar, UseLot, UseOutcome } from '../usage/act';
import type { AtPlace, PlanDifference } from '../usage/differences';
import type { UseQuestion } from '../usage/questions';
import { capitalised, countWord, listWords } from './numbers';
import { lengthWords, screwWords } from './plans';

/** The words of the record of use. */

export const USE_OUTCOME_WORDS: Record<UseOutcome, string> = {
  implanted: 'Implanted',
  openedNotImplanted: 'Opened, not implanted',
  returnedUnopened: 'Returned unopened',
  droppedOrDamaged: 'Dropped or damaged',
  notFound: 'Not found',
};

export const LOST_STEP_WORDS: Record<LostStep, string> = {
  atOpening: 'when it was opened',
  during: 'during the case',
  atCount: 'at a count',
  comingBack: 'on the way back',
};

export const DELAY_STEP_WORDS: Record<DelayStep, string> = {
  beforeStart: 'before it began',
  layingUp: 'laying up',
  during: 'during the case',
  atCount: 'at a count',
  afterwards: 'afterwards',
};

/** `12 minutes`; `minutes not stated`. */
export const delayMinutes = (minutes: number | null): string =>
  minutes === null ? 'minutes not stated' : minutes === 1 ? '1 minute' : `${minutes} minutes`;

export const OPENING_BAR_WORDS: Record<OpeningBar, string> = {
  pastUseBy: 'past use-by',
  held: 'held',
  recalled: 'recalled',
};

/** `Not found during the case`, `Implanted`; an instrument that was opened is `Opened, to be reprocessed`. */
export function outcomeWords(outcome: UseOutcome, lostAt: LostStep | null, reusable = false): string {
  if (outcome === 'notFound' && lostAt !== null) return `Not found ${LOST_STEP_WORDS[lostAt]}`;
  return outcome === 'openedNotImplanted' ? openedWords(reusable) : USE_OUTCOME_WORDS[outcome];
}

/** What is said of an instrument that is reprocessed where an implant was opened for nothing. */
export const openedWords = (reusable: boolean): string =>
  reusable ? 'Opened, to be reprocessed' : USE_OUTCOME_WORDS.openedNotImplanted;

/** `P1, hole 3`, `P1, the plate`, `free screw L1`. */
export function placeWords(place: AtPlace | null): string {
  if (place === null) return 'no place in the plan';
  switch (place.kind) {
    case 'plate':
      return `${place.plate}, the plate`;
    case 'hole':
      return `${place.plate}, hole ${place.hole}`;
    case 'free':
      return `free screw ${place.screw}`;
    default:
      return never(place);
  }
}

/** What can be wrong with a record of use, and the way out. */
export const usageWords = {
  mayNot: (name: string, what: string) => `${name} can’t ${what}.`,
  noSuchCase: 'There is no such case.',
  nothingThere: (reference: string) =>
    `Nothing is in theatre for ${reference}: its kit is issued first, or a set is sent to it.`,
  idTaken: 'This id belongs to another entry. Enter it again.',
  unknownSession: 'It can’t be told who entered this: sign in, and enter it again.',
  cancelled: (reference: string) => `${reference} is cancelled and nothing of it was issued.`,

  notHere: (name: string) =>
    `${name} is not on record as being out for this case. Fetch it on the picking page first, then enter it again.`,
  noImplant: (name: string) => `${name} is an instrument: say what else became of it.`,
  otherItem: 'That source holds another item.',
  noSuchPlace: (place: string) =>
    `The confirmed plan has no ${place}: it was changed meanwhile. Look again, and enter it once more.`,
  nothingFree: (name: string, pieces: number) =>
    pieces === 0
      ? `${name}: of every piece issued it is recorded already what became of it. Nothing was recorded twice.`
      : `${name}: only ${countWord(pieces)} ${pieces === 1 ? 'is' : 'are'} left of which nothing is recorded.`,
  noSuchReturn: (name: string) =>
    `${name}: the return does not say that it was opened, or this is recorded already.`,
  makesClear: 'Opened at the return: it was implanted, or it was not.',
  noSuchEntry: 'The record has no such entry.',
  noWaste: 'That entry stands no longer, or nothing was wasted by it: a reason is named for waste alone.',
  noSuchThing: 'There is no such set or item.',
  takenBackAlready: 'That entry is taken back already.',
  becauseNeeded: 'The record is closed: say why it is corrected.',
  becauseTooEarly: 'The record is open: take the entry back, and enter what is right.',

  doNotOpen: (name: string, bars: readonly OpeningBar[]) =>
    `Do not open ${name}: it is ${listWords(bars.map((bar) => OPENING_BAR_WORDS[bar]))}. Put it aside and ask for another. If it was opened all the same, say so: what happened is recorded.`,
  needsNote: 'Say how it came to be opened.',

  pending: (missing: number) =>
    `${missing === 1 ? 'One entry is' : `${missing} entries are`} not saved yet: wait until all are.`,
  changed: 'Others entered more meanwhile: look again before you close it.',
  otherQuestions: 'What stays open has changed meanwhile: look again, and close it with what is open now.',
  closed: 'This record is closed.',
  notClosed: 'This record is not closed.',
  notWhole: (codes: readonly string[]) =>
    `You are counting ${listWords(codes)} without seeing what anybody found: close your count first, then the record is shown whole.`,
  nothingRecorded:
    'Nothing is recorded, and every set came back unopened or is still out: there is nothing to close.',
  proofNeeded: 'Prove who you are again for this; a proof is good for two minutes.',
};

export const ACT_FAULT_WORDS: Record<ReturnType<typeof actFaults>[number], string> = {
  lostAtNeeded: 'Say at which step it was not found.',
  lostAtTooMuch: 'Only of what was not found it is said at which step.',
  oneAHole: 'One place takes one piece.',
  lotOfOther:
    'A piece of a set has the lot that was read, or none; a single pack the one that was read or issued.',
  delayOfNothing: 'Say how many minutes, the reason, or what happened.',
  racked: 'A piece of an open set is not returned unopened: what is not named goes back with its set.',
};

/**
 * All differences, one sentence each; what is planned and not recorded is gathered by plate, for while a case goes on that is
 * most of it.
 */
export function differenceSentences(
  differences: readonly PlanDifference[],
  nameOf: (itemId: string) => string,
): string[] {
  const notYet = differences.filter((one) => one.kind === 'plannedNotFilled');
  const others = differences.filter((one) => one.kind !== 'plannedNotFilled');
  const plates = [...new Set(notYet.flatMap(({ at }) => (at.kind === 'hole' ? [at.plate] : [])))];
  const free = notYet.flatMap(({ at }) => (at.kind === 'free' ? [at.screw] : []));
  return [
    ...others.map((one) => planDifferenceWords(one, nameOf)),
    ...plates.map((plate) => {
      const holes = notYet.flatMap(({ at }) => (at.kind === 'hole' && at.plate === plate ? [at.hole] : []));
      return `${plate}: planned, and nothing recorded, in ${holes.length === 1 ? 'hole' : 'holes'} ${listWords(holes)}.`;
    }),
    ...(free.length > 0
      ? [`Planned, and nothing recorded: free ${free.length === 1 ? 'screw' : 'screws'} ${listWords(free)}.`]
      : []),
  ];
}

/** What a difference from the plan says, in one sentence. */
function planDifferenceWords(one: PlanDifference, nameOf: (itemId: string) => string): string {
  switch (one.kind) {
    case 'plateNotUsed':
      return `${one.at.kind === 'plate' ? one.at.plate : ''}: ${nameOf(one.plannedItemId)} was planned, and no plate is recorded.`;
    case 'otherPlate':
      return `${placeWords(one.at)}: ${nameOf(one.itemId)}, and ${nameOf(one.plannedItemId)} was planned.`;
    case 'plannedNotFilled':
      return `${placeWords(one.at)}: ${one.fill === null ? 'a screw' : screwWords(one.fill)} was planned, and nothing is recorded.`;
    case 'otherLength':
      return `${placeWords(one.at)}: ${writeMm(one.lengthUm)} mm, and ${lengthWords(one.planned)} was planned.`;
    case 'lengthNotEstablished':
      return `${placeWords(one.at)}: no length is stated to hold it against.`;
    case 'otherItem':
      return `${placeWords(one.at)}: ${nameOf(one.itemId)}, and ${one.screwFamily} was planned.`;
    case 'extraScrew':
      return `${placeWords(one.at)}: ${nameOf(one.itemId)}, and ${EXTRA_WORDS[one.planned]}.`;
    case 'severalHere':
      return `${placeWords(one.at)}: ${countWord(one.entryIds.length)} are recorded for one place.`;
    case 'noPlace':
      return `${one.quantity > 1 ? `${one.quantity} × ` : ''}${nameOf(one.itemId)}: implanted, with no place in the plan said.`;
    default:
      return never(one);
  }
}

const EXTRA_WORDS = {
  empty: 'it was to be left empty',
  wire: 'a temporary wire was planned',
  undecided: 'nothing was planned there',
} as const;

/**
 * What stays open, in one sentence.
 *
 * @param nameOf names a source by its key, a set by its id, a place by its text
 */
export function openUseWords(question: UseQuestion, nameOf: (key: string) => string): string {
  const name = nameOf(question.key);
  switch (question.kind) {
    case 'stillOut':
      return `${name}: of ${countWord(question.pieces)} issued nobody has said what became of ${question.pieces === 1 ? 'it' : 'them'}.`;
    case 'openedUnsaid':
      return `${name}: ${countWord(question.pieces)} opened, by the return, and not said whether implanted.`;
    case 'beyond':
      return `${name}: ${countWord(question.pieces)} more ${question.pieces === 1 ? 'is' : 'are'} recorded than there ${question.pieces === 1 ? 'was' : 'were'}.`;
    case 'countDiffers':
      return `${name}: ${countWord(question.back)} ought to be back by this record, and the final count has ${countWord(question.counted)}.`;
    case 'notFound':
      return `${name}: ${countWord(question.pieces)} not found.`;
    case 'notCounted':
      return `${name}: no final count says that everything not named here is still in it.`;
    case 'severalHere':
      return `${name}: more than one piece is recorded for this place.`;
    case 'noReason':
      return `${name}: ${countWord(question.pieces)} wasted, and the reason is not stated.`;
    case 'countQuestion':
      return `${name}: an open question of the counts in theatre.`;
    default:
      return never(question);
  }
}

/** The pack a piece was in, and its load, as they are said beside a lot that nobody can read. */
interface SetAndLoad {
  code: string;
  pack: { number: string; load: string | null } | null;
}

/** `lot 4711, read at the table`; `lot not available: DRT-01, pack 26-0012, load 26-0101-02`. */
export function lotOfUseWords(lot: UseLot, issued: string | null, set: SetAndLoad | null): string {
  switch (lot.kind) {
    case 'read':
      return `lot ${lot.lot}, read at the table`;
    case 'asIssued':
      return issued === null ? 'lot not known' : `lot ${issued}, as issued`;
    case 'setAndLoad':
      return `lot not available: ${setAndLoadWords(set)}`;
    default:
      return never(lot);
  }
}

function setAndLoadWords(set: SetAndLoad | null): string {
  if (set === null) return 'set not on record';
  if (set.pack === null) return `${set.code}, pack not on record`;
  return `${set.code}, pack ${set.pack.number}, ${set.pack.load === null ? 'load not on record' : `load ${set.pack.load}`}`;
}

/** The words of the record of use on paper. */
export const useSheetWords = {
  edition: (entries: number) => `of ${entries} ${entries === 1 ? 'entry' : 'entries'}`,
  subtitle: 'What was used in this case, for the clinical record. No patient is named here.',
  facts: {
    day: 'Day',
    theatre: 'Theatre',
    region: 'Region and side',
    surgeon: 'Surgeon',
    plan: 'Plan',
    closed: 'Closed by',
  },
  noPlan: 'none confirmed',
  plan: (version: number) => `version ${version}, confirmed`,
  notClosed: 'not closed yet',
  openWord: 'NOT CLOSED',
  openLine: 'This record is still being entered: it may change.',
  staysOpen: 'OPEN',
  reconciled: 'Every piece out is back, implanted or discarded.',
  implanted: 'Implanted',
  others: 'Not implanted',
  none: 'None recorded.',
  differences: 'Other than planned',
  asPlanned: 'As planned.',
  account: 'The account',
  accountNote: 'pieces out are pieces back, implanted, discarded or not found',
  everything: 'Everything at the table',
  unknown: (lines: number) =>
    `What ${lines} ${lines === 1 ? 'line' : 'lines'} held nobody has counted: “?” is not established.`,
  delays: 'Delays',
  delay: (minutes: string, reason: string, more: readonly string[]) =>
    `${[capitalised(minutes), `reason ${reason}`, ...more].join(', ')}.`,
  reason: (said: string) => `reason: ${said}`,
  corrections: 'Corrected after closing',
  correction: (
    what: string,
    back: { by: string; because: string | null } | null,
    because: string | null,
    at: string,
    by: string,
  ) =>
    back === null
      ? `${what}: entered by ${by}, ${at}, because “${because ?? ''}”.`
      : `${what}: taken back by ${back.by}, ${at}, because “${back.because ?? ''}”.`,
  signed: 'Scrub practitioner',
  proved: (name: string) => `${name} proved who they are as the record was closed`,
  goodThrough: (date: string) => `use-by ${date}`,
  despite: (bars: readonly string[]) => `opened although ${listWords(bars)}`,
  figure: (key: string, name: string) => `${key}: ${name}, with the names of its holes`,
  columns: { place: 'Where', item: 'What', length: 'Length', lot: 'Lot', outcome: 'Outcome' },
  accountColumns: {
    from: 'From',
    out: 'Out',
    back: 'Back',
    implanted: 'Implanted',
    discarded: 'Discarded',
    notFound: 'Not found',
    open: 'Open',
  },
};

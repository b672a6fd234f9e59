import type { AsideRoute, Fault } from '../bench/act';
import type { CountPurpose } from '../bench/closing';
import type { Likeness } from '../bench/lookAlikes';
import type { BenchStanding, PackBar } from '../bench/packable';
import { never } from '../identity/result';
import { capitalised, countWord, listWords } from './numbers';
import { TURN_STEP_WORDS } from './sets';

const lines = (count: number) => (count === 1 ? 'one line' : `${countWord(count)} lines`);
const pieces = (count: number) => (count === 1 ? 'one piece' : `${countWord(count)} pieces`);

/** What can be wrong at the bench, and the way out. */
export const benchWords = {
  noSuchSet: 'There is no such set.',
  noSuchCount: 'There is no such count.',
  sealed: (code: string) => `${code} is sealed. A set is counted on the bench, with its wrap open.`,
  withdrawn: (code: string) => `${code} is out of service.`,
  noTurn: (code: string) => `${code} has not begun a turn: receive it first.`,
  notPermitted: (name: string, what: string) => `${name} can’t ${what}.`,
  countedAlready: (name: string) =>
    `${name} counted this set in this turn: the second check is made by another person.`,
  nothingToCheck: 'Nobody has counted this set in this turn: there is nothing to check yet.',
  nothingInDispute: 'No line of this set is in dispute.',
  othersOpen: (name: string) => `${name} still has a count of this set open; close it first.`,
  idTaken: 'This count was begun by somebody else or for another set. Begin it again.',
  otherOpen: 'You have a count of this set open already. Close it first.',
  notYours: (name: string) => `This count is ${name}’s; begin your own.`,
  unknownSession: 'Nobody knows in whose session this was entered; enter it again.',
  closed: 'This count is closed: begin another one.',
  abandoned: 'This count was abandoned: begin another one.',
  versionChanged: (code: string) =>
    `${code} was fitted to another version since this count began. Abandon it and begin again.`,
  entryTaken: 'An entry with this id says something else. Enter it again.',
  unknownLine: 'This line is not part of the set’s configuration; reload the set.',
  unknownItem: 'There is no such item in the catalogue; choose the piece again.',
  unknownEntry: 'There is no such entry in this count.',
  undoneAlready: 'This entry is undone already.',
  unknownSet: 'There is no such set to take it to.',
  noSuchStock: 'There is no such lot on the shelf; choose again.',
  stockOfOther: 'This lot is of another item.',
  stockHeld: 'This lot is held: it is put into no set.',
  stockPast: 'This lot is past its use-by.',
  stockPastForCase: (useBy: string, reference: string, caseDate: string) =>
    `This lot is good until ${useBy}, and the set is promised to ${reference} on ${caseDate}: take a later one.`,
  stockRecalled: 'This item is withdrawn or recalled: it is put into no set.',
  stockUnlike: 'The shelf says something else of this lot; look at the pack again.',
  stockShort: (there: number) => `Only ${there} of this lot are on the shelf.`,
  stockTravels: (left: number) =>
    `${left === 0 ? 'None' : `Only ${left}`} of these can be taken: the rest travels with another set that goes short, or is picked for a case.`,
  routeNotOpen: 'An implant or a single-use piece is not repaired: it is discarded.',
  refillOnly: 'A refill is entered with its own form.',
  secondIsSame: 'The second person is another one.',
  secondNotPermitted: (name: string) => `${name} can’t stand for a refill.`,
  proofNeeded: 'Prove who you are to say this.',
  secondProofNeeded: 'A settling is counted by two people together: the second one proves who they are too.',
  pending: (missing: number, all: number) =>
    `A count with pending entries can’t be closed: ${missing} of ${all} are not here yet.`,
  moreHere: (more: number) =>
    `${countWord(more)} ${more === 1 ? 'entry was' : 'entries were'} made on another screen: reload the count, look it over and close it then.`,
  nothingCounted: 'Nothing is counted yet: count one layer whole.',
  lineNotCounted: 'Not counted yet; a layer is counted whole.',
  notInDispute: 'This line is not in dispute; a settling is about the disputed lines alone.',
  moreThanThere: 'More pieces were put aside or taken away than were found: count this line again.',
  putInNotThere: 'Fewer pieces are there than were put in: count this line again, or undo the refill.',
  piecesMoved: 'Pieces were put in or taken home: undo that first, or close the count.',
};

export const PURPOSE_WORDS: Record<CountPurpose, { title: string; verb: string; act: string }> = {
  count: { title: 'Count', verb: 'count a set', act: 'Begin to count' },
  check: { title: 'Second check', verb: 'check a count', act: 'Begin the blind second check' },
  settle: { title: 'Count again together', verb: 'settle a count', act: 'Count the disputed lines again' },
};

export const FAULT_WORDS: Record<Fault, string> = {
  bent: 'bent',
  blunt: 'blunt',
  corroded: 'corroded',
  stained: 'stained',
  markingGone: 'marking gone',
  boreWorn: 'bore worn',
};

export const ROUTE_WORDS: Record<AsideRoute, string> = { repair: 'to repair', discard: 'discarded' };

export const LIKENESS_WORDS: Record<Likeness, string> = {
  otherSide: 'the other side',
  nextLength: 'the next length',
  nextDiameter: 'the next diameter',
  codeReadsAlike: 'its code reads alike',
};

/** How far a set is counted in its present turn, a sentence each. */
export function standingSentences(standing: BenchStanding): string[] {
  const { lines: all, counted, checked, checkNeeded, countedBy, openCounts } = standing;
  const by = countedBy.length > 0 ? `, by ${listWords(countedBy.map(({ name }) => name))}` : '';
  return [
    `${counted} of ${all} lines counted${by}.`,
    ...(checkNeeded ? [`${checked} of ${all} lines counted by two people.`] : []),
    ...openCounts.map(
      ({ person, purpose, entries }) =>
        `${person} has a ${PURPOSE_NOUNS[purpose]} open, with ${entries === 1 ? 'one entry' : `${entries} entries`}.`,
    ),
  ];
}

const PURPOSE_NOUNS: Record<CountPurpose, string> = {
  count: 'count',
  check: 'second check',
  settle: 'settling',
};

/** What keeps a set from being packed, and the way out. */
export function packBarSentence(bar: PackBar): string {
  switch (bar.kind) {
    case 'notOnBench':
      return `It is ${TURN_STEP_WORDS[bar.step]}; a set is packed on the bench.`;
    case 'notCounted':
      return `Not counted whole since it was last packed: ${lines(bar.lines)} left.`;
    case 'notChecked':
      return `The blind second check by another person is to be made: ${lines(bar.lines)} left.`;
    case 'disputed':
      return `Two counts differ on ${lines(bar.lines)}: count them again together.`;
    case 'openCount':
      return `${bar.person} has a count open, with ${bar.entries === 1 ? 'one entry' : `${bar.entries} entries`}: close or abandon it.`;
    case 'foreign':
      return `${capitalised(pieces(bar.pieces))} of no line ${bar.pieces === 1 ? 'lies' : 'lie'} in it: find ${bar.pieces === 1 ? 'its' : 'their'} home.`;
    case 'surplus':
      return `${capitalised(pieces(bar.pieces))} too many: find ${bar.pieces === 1 ? 'its' : 'their'} home.`;
    case 'refillsOfOne':
      return `A look-alike was put in by one person on ${lines(bar.lines)}: a second one checks it.`;
    default:
      return never(bar);
  }
}

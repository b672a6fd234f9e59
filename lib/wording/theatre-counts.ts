import type { CountMoment } from '../theatreCounts/act';
import type { QuestionActKind, SettledAs } from '../theatreCounts/question';
import { countWord } from './numbers';

export const MOMENT_WORDS: Record<CountMoment, string> = {
  first: 'First count',
  final: 'Final count',
};

export const QUESTION_ACT_WORDS: Record<QuestionActKind, string> = {
  found: 'Found',
  xRayAsked: 'X-ray asked for',
  discarded: 'Thrown away knowingly',
  stillOpen: 'Still open',
  countedAgain: 'Counted again',
};

export const SETTLED_AS_WORDS: Record<SettledAs, string> = {
  accountedFor: 'settled: all accounted for',
  notFound: 'settled: not found',
};

/** What can be wrong with a count in theatre, and the way out. */
export const theatreCountWords = {
  mayNot: (name: string, what: string) => `${name} can’t ${what}.`,
  noSuchCount: 'There is no such count.',
  notYours: (name: string) => `This count was begun by ${name}, who closes it with the other person.`,
  closed: 'This count is closed.',
  nothingThere: (reference: string) =>
    `Nothing is in theatre for ${reference}: its kit is issued first, or a set is sent to it.`,
  firstFirst: (reference: string) =>
    `${reference} has no first count: a final one has nothing to be held against. Make the first count.`,
  unknownLine: 'That line is of no set in theatre for this case.',
  unknownAdded: 'That item was not added to this case.',
  notInFirst: 'What was implanted or thrown away is said at the final count.',
  idTaken: 'This id belongs to another entry. Enter it again.',
  unknownSession: 'It can’t be told who entered this: sign in, and enter it again.',
  unknownItem: 'The catalogue has no such item.',

  linesLeft: (code: string, left: number) =>
    `${code}: ${left === 1 ? 'one line is' : `${left} lines are`} not counted. An open set is counted whole; say so where it was not opened.`,
  countedFirst: (code: string) => `${code} was counted at the first count: it is open, and is counted again.`,
  addedLeft: (name: string) => `${name}: not counted yet.`,
  nothingCounted: 'Nothing is counted yet.',
  goneTooMany: (name: string) => `${name}: more is said to be implanted or thrown away than there was.`,

  proofNeeded: 'Both people prove who they are: the one who counts and the one who counts with them.',
  pending: (missing: number) =>
    `${missing === 1 ? 'One entry is' : `${missing} entries are`} not saved yet: wait until all are.`,
  changed: 'Other entries are on record than those shown: look again.',
  secondIsSame: 'The second person is another than the first.',
  secondMayNot: (name: string) => `${name} can’t count with somebody in theatre.`,

  noSuchQuestion: 'There is no such question.',
  settledAlready: 'This question is settled.',
  moreThanMissing: (left: number) =>
    `Only ${countWord(left)} ${left === 1 ? 'piece is' : 'pieces are'} still unaccounted for.`,
  reasonNeeded: 'Say how it came out, in a few words.',
  notAccounted: (left: number) =>
    `${left === 1 ? 'One piece is' : `${countWord(left)} pieces are`} not accounted for. Say first where it was found or thrown away; a theatre manager or an incident lead settles it as not found.`,
  notFoundTakes:
    'Settling a question as not found takes a theatre manager or an incident lead as one of the two.',
};

/** `Drill bit 2.5, 3 expected, 2 counted`. */
export const questionWords = (question: { thing: string; expected: number; counted: number }): string =>
  `${question.thing}: ${question.expected} expected, ${question.counted} counted`;

/** Said wherever the set goes, for as long as it is open. */
export const openQuestionWords = (count: number): string =>
  count === 1 ? 'Open question from a count in theatre' : `${count} open questions from counts in theatre`;

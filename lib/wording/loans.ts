import type { LoanStage } from '../loans/counting';
import type { LoanNext, QuestionKind } from '../loans/nextStep';
import type { LoanState } from '../loans/states';
import type { LoanNews } from '../turns/notice';
import { listWords } from './numbers';

type Tone = 'good' | 'attention' | 'stop' | 'unknown' | 'neutral';

export const LOAN_STATE_WORDS: Record<LoanState, string> = {
  asked: 'asked for',
  refused: 'refused by the lender',
  calledOff: 'called off',
  confirmed: 'to come',
  here: 'here, being unpacked',
  inService: 'in use here',
  goingBack: 'to go back',
  goneBack: 'gone back',
};

export const LOAN_STATE_TONES: Record<LoanState, Tone> = {
  asked: 'unknown',
  refused: 'stop',
  calledOff: 'neutral',
  confirmed: 'neutral',
  here: 'attention',
  inService: 'good',
  goingBack: 'attention',
  goneBack: 'neutral',
};

export const PAPER_WORDS = {
  declaration: 'decontamination declaration',
  instructions: 'written instructions',
};

export const USE_OUTCOME_WORDS = {
  implanted: 'implanted',
  openedNotImplanted: 'opened, not implanted',
};

export const CLAIM_STATE_WORDS = {
  open: 'put to the lender',
  agreed: 'agreed',
  disputed: 'disputed by the lender',
  withdrawn: 'withdrawn by us',
};
export const CLAIM_STATE_TONES: Record<keyof typeof CLAIM_STATE_WORDS, Tone> = {
  open: 'attention',
  agreed: 'good',
  disputed: 'stop',
  withdrawn: 'neutral',
};

const QUESTION_WORDS: Record<QuestionKind, string> = {
  acceptLate: 'whether it is taken although it came late',
  useWithout: 'whether it is used without what is not in it',
};
export const questionWords = (kind: QuestionKind): string => QUESTION_WORDS[kind];

/** What the surgeon of its case and whoever asked for it are told, as the end of a sentence that names the loan. */
export const LOAN_NEWS_WORDS: Record<LoanNews, string> = {
  asked: 'it was asked for.',
  confirmed: 'the lender says it comes.',
  refused: 'the lender does not lend it.',
  calledOff: 'it was called off.',
  arrived: 'it is here, and not unpacked yet.',
  arrivedLate: 'it came late, and a named person is asked whether it is taken.',
  papersMissing: 'its declaration or instructions are missing: it is held until they are here.',
  takenLate: 'it is taken although it came late.',
  notTakenLate: 'it came late and is not taken.',
  usedWithout: 'it is used without what is not in it.',
  notUsedWithout: 'it lacks pieces and is not used.',
  unpacked: 'it is unpacked, counted, and goes on to decontamination.',
  goingBack: 'it goes back to the lender.',
};

/** The next step, as the heading of its part of the screen. */
export function nextWords(next: LoanNext): string {
  switch (next.do) {
    case 'recordAnswer':
      return 'Enter what the lender says';
    case 'callOff':
      return 'Call it off: what it was for is over or cancelled';
    case 'bringList':
      return 'Bring in the lender’s content list';
    case 'recordArrival':
      return 'Wait for it, and enter its arrival';
    case 'lookAtPapers':
      return 'Look for the declaration and the instructions';
    case 'weigh':
      return 'Weigh each tray';
    case 'tag':
      return 'Fix the ownership tags';
    case 'countIn':
      return 'Count it against the list';
    case 'checkIn':
      return 'A second person counts it, without seeing the first figures';
    case 'settleIn':
      return 'Count again where the two counts differ';
    case 'takeIn':
      return 'Hand it on for decontamination';
    case 'sendBack':
      return 'Send it back: a named person said no';
    case 'ask':
      return `Ask a named person ${QUESTION_WORDS[next.question]}`;
    case 'awaitAnswer':
      return `Wait for the answer ${QUESTION_WORDS[next.question]}`;
    case 'getPapers':
      return 'Get the missing papers: it is held until they are here';
    case 'ordinaryTurn':
      return 'It takes its turn like any other set';
    case 'beginReturn':
      return 'Begin the return';
    case 'decontaminate':
      return `Decontaminate tray ${next.tray} before it is counted`;
    case 'countOut':
      return 'Count it before it goes';
    case 'checkOut':
      return 'A second person counts it before it goes';
    case 'settleOut':
      return 'Count again where the two counts differ';
    case 'weighOut':
      return 'Weigh each tray before it goes';
    case 'declare':
      return 'Declare how it was decontaminated';
    case 'handOver':
      return 'Hand it over, to somebody by name';
    case 'claim':
      return 'Put to the lender what is not as it should be';
    case 'settleClaims':
      return 'Enter what came of the claims';
    case 'nothing':
      return 'Nothing more to do';
  }
}

/** `2430 → '1 day 16 h 30 min'`. */
export function lateWords(minutes: number): string {
  const parts = [
    [Math.floor(minutes / 1_440), 'day'],
    [Math.floor((minutes % 1_440) / 60), 'h'],
    [minutes % 60, 'min'],
  ] as const;
  const said = parts
    .filter(([n]) => n > 0)
    .map(([n, unit]) => `${n} ${unit === 'day' && n > 1 ? 'days' : unit}`);
  return said.length === 0 ? 'less than a minute' : said.join(' ');
}

/** `3 of 4, 75 %`. */
export const shareWords = (part: number, of: number): string =>
  `${part} of ${of}, ${Math.round((part / of) * 100)} %`;

export const stageWords = (stage: LoanStage): string => (stage === 'in' ? 'as it came' : 'as it goes back');

/** Where a piece was last there, in words. `at` is already as people read it. */
export const lastThereWords = (step: 'list' | 'arrivalCount' | 'benchCount', at: string | null): string =>
  ({
    list: 'on the lender’s list; not found as it was unpacked',
    arrivalCount: `in the count as it came, ${at ?? 'time not stated'}`,
    benchCount: `in the count at the bench, ${at ?? 'time not stated'}`,
  })[step];

/** What can be wrong with an act on a loan, and the way out. */
export const loanWords = {
  needed: 'Say it: nothing stands here.',
  tooLong: (most: number) => `At most ${most} characters.`,
  wholeNumber: 'A whole number.',
  caseOrPeriod: 'Name the case it is for, or the first and the last day of a period; not both.',
  untilNeeded: 'State the last day of the period.',
  untilBefore: 'The last day comes before the first.',

  mayNotAsk: (name: string) => `${name} can’t ask a lender for a loan.`,
  mayNotKeep: (name: string) => `${name} can’t do this with a loan: the loan keeper can.`,
  mayNotCount: (name: string) => `${name} can’t count loans.`,
  mayNotDeclare: (name: string) => `${name} can’t declare a loan decontaminated: the bench can.`,
  mayNotLenders: (name: string) => `${name} can’t change lenders.`,
  noSuchLoan: 'There is no such loan.',
  noSuchLender: 'There is no such lender.',
  lenderTaken: (name: string) => `There is a lender of this name already: ${name}.`,
  lenderChanged: (name: string) => `${name} was changed by someone else. Nothing was saved.`,
  lenderInUse: (name: string, numbers: readonly string[]) =>
    `${name} still has ${listWords(numbers)} with us: it goes out of use once they are over.`,
  lenderOut: (name: string) => `${name} is out of use: bring it back into use, or choose another.`,
  noSuchCase: 'There is no such case on the list: choose another.',
  caseOver: (reference: string) => `Case ${reference} is over or cancelled: choose another.`,
  noSuchConfiguration: 'There is no such configuration in force: choose another, or say it in words alone.',
  changed: (number: string) => `${number} was changed by someone else. Nothing was saved: look at it again.`,
  notNow: (number: string, state: LoanState) =>
    `${number} is ${LOAN_STATE_WORDS[state]}: this can’t be done with it now.`,
  notYet: (number: string, next: LoanNext) => `${number} is not so far. First: ${nextWords(next)}.`,
  future: 'That is still to come: enter it when it has happened.',
  beforeAsked: 'That is before it was asked for.',
  noList: 'It has no content list yet.',
  listStands: (number: string) => `The list of ${number} stands: it was counted or tagged against.`,
  noConfigurationAsked: 'It was asked for in words alone: import the lender’s list.',
  otherTrays: (listed: number, arrived: number) =>
    `The list has ${listed} ${listed === 1 ? 'tray' : 'trays'}, and ${arrived} arrived: one of the two is wrong, or not all is here.`,
  noSuchPlace: 'There is no such place in use: choose another.',
  eachTrayOnce: 'Give each tray of the loan one mass, once.',
  nothingKnownInTray: (tray: number) =>
    `Nothing in tray ${tray} is in the catalogue, so nobody could count it at the bench: add its items to the catalogue and bring in the list again.`,
  linesBeside: (lines: number) =>
    `${lines === 1 ? 'one line is' : `${lines} lines are`} not in the catalogue and counted with the loan only`,
  kindName: (lender: string, number: string, tray: number) => `${lender}, ${number}, tray ${tray}`,
  trayName: (tray: number) => `Tray ${tray}`,
  kindNote: (number: string) =>
    `As the lender’s list of ${number} says. A must-have class that the list does not state counts as class 1.`,
  tagTaken: (tag: string) => `There is a set ${tag} already.`,
  nothingToCount: (purpose: string) => `There is nothing to ${purpose} now.`,
  lineMissing: 'not counted: state it, with 0 where there is none.',
  lineTwice: 'stated twice.',
  lineUnknown: 'not a line that is to be counted now.',
  checkByAnother: 'You made the first count: another person checks it, without your figures.',
  notAskable: (name: string) =>
    `${name} can’t decide this: ask the operating surgeon, the theatre manager or the decontamination lead.`,
  noSuchPerson: 'There is no such person here.',
  askedAlready: (name: string) => `${name} was asked that already and has not answered.`,
  nothingToAsk: 'There is nothing to decide of that kind.',
  noSuchQuestion: 'There is no such question.',
  notAskedOfYou: (name: string) => `This was asked of ${name}, who alone answers it.`,
  answeredAlready: 'This was answered already.',
  promisedTo: (code: string, reference: string) =>
    `${code} is promised to case ${reference}: take that back on the theatre list first.`,
  proveFirst: 'Prove who you are again, at the moment you say this.',
  declaredAlready: (number: string) => `${number} is declared and goes: what was used of it stands.`,
  wentBackAs: (number: string) => `Gone back to its lender with ${number}.`,
  notUsedIn: (reference: string) => `No tray of this loan was in theatre for ${reference}.`,
  moreThanCame: (name: string, came: number) => `${name}: ${came} came, so no more can have been used.`,
  noSuchDiscrepancy: 'The counts show nothing of that kind on this line.',
  claimedAlready: 'That is claimed already.',
  noSuchClaim: 'There is no such claim.',
  claimOver: 'That claim is settled.',
  stillMissing: (code: string, papers: readonly string[]) =>
    `${code} is on loan and its ${listWords(papers)} ${papers.length > 1 ? 'are' : 'is'} not here: it stays held until the loan keeper has entered ${papers.length > 1 ? 'them' : 'it'}.`,
  notUnpacked: (code: string, number: string) =>
    `${code} is on loan and ${number} is not unpacked yet: weigh and count it on its own page first.`,
  leaving: (code: string, number: string) =>
    `${code} goes back to its lender with ${number}: it is not used or promised any more.`,
  loanGoneBack: (code: string) => `${code} has gone back to its lender: ask for it again.`,
};

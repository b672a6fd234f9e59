import type { LoanStage } from '../loans/counting';
import type { LoanNext, QuestionKind } from '../loans/nextStep';
import type { LoanState } from '../loans/states';
import type { LoanNews } from '../turns/notice';

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

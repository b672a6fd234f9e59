import type { TurnStep } from '../sets/setState';
import type { CountingNext } from './counting';
import type { LoanState } from './states';

export type Paper = 'present' | 'missing';

/** What is known of a loan, as far as its next step rests on it. */
export interface LoanFacts {
  state: LoanState;
  listed: boolean;
  /** Came after it was due. */
  late: boolean;
  declaration: Paper | null;
  instructions: Paper | null;
  trays: readonly {
    tray: number;
    weighedIn: boolean;
    weighedOut: boolean;
    /** `touched`: it took a step of ours beyond arriving and being held. */
    set: { step: TurnStep; touched: boolean } | null;
  }[];
  counting: { in: CountingNext; out: CountingNext };
  /** Lines that came with fewer sound pieces than listed. */
  shortOnArrival: number;
  questions: readonly { kind: QuestionKind; answer: 'yes' | 'no' | null }[];
  declared: boolean;
  openClaims: number;
  /** Discrepancies nobody has claimed yet. */
  unclaimed: number;
  /** The case is over, or the period, or the lender wants it back by today. */
  timeToGo: boolean;
}

/** What only a named person decides: taking what came late, or using it without what is not in it. */
export type QuestionKind = 'acceptLate' | 'useWithout';

/** The one thing to do next about a loan. */
export type LoanNext =
  | { do: 'recordAnswer' | 'callOff' | 'bringList' | 'recordArrival' | 'lookAtPapers' | 'weigh' | 'tag' }
  | { do: 'countIn' | 'checkIn' | 'settleIn' | 'takeIn' | 'sendBack' }
  | { do: 'ask'; question: QuestionKind }
  | { do: 'awaitAnswer'; question: QuestionKind }
  | { do: 'getPapers' | 'ordinaryTurn' | 'beginReturn' }
  | { do: 'decontaminate'; tray: number }
  | { do: 'countOut' | 'checkOut' | 'settleOut' | 'weighOut' | 'declare' | 'handOver' }
  | { do: 'claim' | 'settleClaims' | 'nothing' };

/** Steps a tray may leave the house from: washed and on the bench, or sterile and not opened. */
const CLEAN_STEPS: ReadonlySet<TurnStep> = new Set(['onBench', 'inSterileStore']);

/** The next step of a loan, the keeper's or, where somebody else must act first, theirs. Total: every state has one. */
export function nextStep(loan: LoanFacts): LoanNext {
  switch (loan.state) {
    case 'asked':
      return { do: loan.timeToGo ? 'callOff' : 'recordAnswer' };
    case 'confirmed':
      if (loan.timeToGo) return { do: 'callOff' };
      return { do: loan.listed ? 'recordArrival' : 'bringList' };
    case 'here':
      return nextOfUnpacking(loan);
    case 'inService':
      return nextInService(loan);
    case 'goingBack':
      return nextOfReturn(loan);
    case 'goneBack':
      if (loan.unclaimed > 0) return { do: 'claim' };
      return { do: loan.openClaims > 0 ? 'settleClaims' : 'nothing' };
    case 'refused':
    case 'calledOff':
      return { do: 'nothing' };
  }
}

function nextOfUnpacking(loan: LoanFacts): LoanNext {
  if (refusedByPerson(loan)) return { do: 'sendBack' };
  if (loan.late) {
    const open = openQuestion(loan, 'acceptLate');
    if (open) return open;
  }
  if (loan.declaration === null || loan.instructions === null) return { do: 'lookAtPapers' };
  if (!loan.listed) return { do: 'bringList' };
  if (loan.trays.some(({ weighedIn }) => !weighedIn)) return { do: 'weigh' };
  if (loan.trays.some(({ set }) => set === null)) return { do: 'tag' };
  if (loan.counting.in !== 'done') return { do: IN[loan.counting.in] };
  if (loan.shortOnArrival > 0) {
    const open = openQuestion(loan, 'useWithout');
    if (open) return open;
  }
  return { do: 'takeIn' };
}

const IN = { count: 'countIn', check: 'checkIn', settle: 'settleIn' } as const;
const OUT = { count: 'countOut', check: 'checkOut', settle: 'settleOut' } as const;

const refusedByPerson = ({ questions }: Pick<LoanFacts, 'questions'>): boolean =>
  questions.some(({ answer }) => answer === 'no');

/** What is still open about a question: that nobody was asked, or that the person has not answered. `null`: agreed to. */
function openQuestion({ questions }: LoanFacts, question: QuestionKind): LoanNext | null {
  const own = questions.filter(({ kind }) => kind === question);
  if (own.some(({ answer }) => answer === 'yes')) return null;
  return { do: own.length === 0 ? 'ask' : 'awaitAnswer', question };
}

function nextInService(loan: LoanFacts): LoanNext {
  if (loan.timeToGo) return { do: 'beginReturn' };
  if (papersMissing(loan)) return { do: 'getPapers' };
  return { do: 'ordinaryTurn' };
}

export const papersMissing = ({
  declaration,
  instructions,
}: Pick<LoanFacts, 'declaration' | 'instructions'>) =>
  declaration !== 'present' || instructions !== 'present';

function nextOfReturn(loan: LoanFacts): LoanNext {
  const dirty = loan.trays.find((tray) => !mayLeave(tray.set));
  if (dirty) return { do: 'decontaminate', tray: dirty.tray };
  if (loan.listed && loan.counting.in === 'done' && loan.counting.out !== 'done')
    return { do: OUT[loan.counting.out] };
  if (loan.trays.some(({ weighedOut }) => !weighedOut)) return { do: 'weighOut' };
  if (loan.unclaimed > 0) return { do: 'claim' };
  return { do: loan.declared ? 'handOver' : 'declare' };
}

/** Washed and not used since, or never opened here at all: then it goes as it came. */
export const mayLeave = (set: LoanFacts['trays'][number]['set']): boolean =>
  set === null || !set.touched || CLEAN_STEPS.has(set.step);

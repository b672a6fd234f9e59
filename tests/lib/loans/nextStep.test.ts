import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LoanFacts, type LoanNext, nextStep } from '@/lib/loans/nextStep';
import { type LoanState, loanState, mayBecome, NEXT_LOAN_STATES } from '@/lib/loans/states';

const fresh: LoanFacts = {
  state: 'asked',
  listed: false,
  late: false,
  declaration: null,
  instructions: null,
  trays: [],
  counting: { in: 'count', out: 'count' },
  shortOnArrival: 0,
  questions: [],
  declared: false,
  openClaims: 0,
  unclaimed: 0,
  timeToGo: false,
};

/** What happened outside the program between two of its steps. */
interface Luck {
  late: boolean;
  papers: boolean;
  papersComeLater: boolean;
  trays: number;
  short: boolean;
  secondCheck: boolean;
  differ: boolean;
  used: boolean;
  damaged: boolean;
  answers: ('yes' | 'no')[];
  lenderSaysNo: boolean;
}

const luck: fc.Arbitrary<Luck> = fc.record({
  late: fc.boolean(),
  papers: fc.boolean(),
  papersComeLater: fc.boolean(),
  trays: fc.integer({ min: 1, max: 4 }),
  short: fc.boolean(),
  secondCheck: fc.boolean(),
  differ: fc.boolean(),
  used: fc.boolean(),
  damaged: fc.boolean(),
  answers: fc.array(fc.constantFrom('yes' as const, 'no' as const), { minLength: 2, maxLength: 2 }),
  lenderSaysNo: fc.boolean(),
});

/** Does what the next step says, as somebody would, and answers the loan as it is afterwards. */
function follow(loan: LoanFacts, next: LoanNext, fate: Luck): LoanFacts {
  const to = (state: LoanState): LoanFacts => {
    expect(mayBecome(loan.state, state), `${loan.state} to ${state}`).toBe(true);
    return { ...loan, state };
  };
  const trays = (change: Partial<LoanFacts['trays'][number]>) =>
    loan.trays.map((one) => ({ ...one, ...change }));
  switch (next.do) {
    case 'callOff':
      return to('calledOff');
    case 'recordAnswer':
      return to(fate.lenderSaysNo ? 'refused' : 'confirmed');
    case 'bringList':
      return { ...loan, listed: true };
    case 'recordArrival':
      return {
        ...to('here'),
        late: fate.late,
        trays: Array.from({ length: fate.trays }, (_, at) => ({
          tray: at + 1,
          weighedIn: false,
          weighedOut: false,
          set: null,
        })),
      };
    case 'lookAtPapers':
      return { ...loan, declaration: fate.papers ? 'present' : 'missing', instructions: 'present' };
    case 'weigh':
      return { ...loan, trays: trays({ weighedIn: true }) };
    case 'tag':
      return {
        ...loan,
        trays: trays({ set: { step: fate.papers ? 'comingBack' : 'held', touched: false } }),
      };
    case 'countIn':
      return {
        ...loan,
        counting: { ...loan.counting, in: fate.secondCheck ? 'check' : 'done' },
        shortOnArrival: !fate.secondCheck && fate.short ? 1 : 0,
      };
    case 'checkIn':
    case 'settleIn': {
      const again = next.do === 'checkIn' && fate.differ;
      return {
        ...loan,
        counting: { ...loan.counting, in: again ? 'settle' : 'done' },
        shortOnArrival: !again && fate.short ? 1 : 0,
      };
    }
    case 'ask':
      return { ...loan, questions: [...loan.questions, { kind: next.question, answer: null }] };
    case 'awaitAnswer':
      return {
        ...loan,
        questions: loan.questions.map((one) =>
          one.kind === next.question
            ? { ...one, answer: fate.answers[one.kind === 'acceptLate' ? 0 : 1] ?? 'yes' }
            : one,
        ),
      };
    case 'takeIn':
      return to('inService');
    case 'sendBack':
    case 'beginReturn':
      return to('goingBack');
    case 'getPapers':
      // they come, and a person lifts the hold; or the day comes without them
      return fate.papersComeLater
        ? { ...loan, declaration: 'present', trays: trays({ set: { step: 'washing', touched: true } }) }
        : { ...loan, timeToGo: true };
    case 'ordinaryTurn':
      return {
        ...loan,
        timeToGo: true,
        trays: trays({ set: { step: fate.used ? 'comingBack' : 'inSterileStore', touched: true } }),
      };
    case 'decontaminate':
      return {
        ...loan,
        trays: loan.trays.map((one) =>
          one.tray === next.tray ? { ...one, set: { step: 'onBench', touched: true } } : one,
        ),
      };
    case 'countOut':
    case 'checkOut':
    case 'settleOut': {
      const further = (
        {
          countOut: fate.secondCheck ? 'check' : 'done',
          checkOut: fate.differ ? 'settle' : 'done',
          settleOut: 'done',
        } as const
      )[next.do];
      return {
        ...loan,
        counting: { ...loan.counting, out: further },
        unclaimed: further === 'done' && fate.damaged ? 1 : 0,
      };
    }
    case 'weighOut':
      return { ...loan, trays: trays({ weighedOut: true }) };
    case 'claim':
      return { ...loan, unclaimed: 0, openClaims: loan.openClaims + loan.unclaimed };
    case 'declare':
      return { ...loan, declared: true };
    case 'handOver':
      return to('goneBack');
    case 'settleClaims':
      return { ...loan, openClaims: 0 };
    case 'nothing':
      return loan;
  }
}

describe('the way of a loan', () => {
  it('ends, whatever happens to it, and what has to be done first was done first', () => {
    fc.assert(
      fc.property(luck, (fate) => {
        let loan = fresh;
        const done: string[] = [];
        for (let at = 0; at < 60; at += 1) {
          const next = nextStep(loan);
          done.push(next.do === 'ask' ? `ask ${next.question}` : next.do);
          if (next.do === 'nothing') break;
          loan = follow(loan, next, fate);
        }
        expect(done.at(-1), done.join(', ')).toBe('nothing');
        const doneBefore = (first: string, then: string) => {
          if (done.includes(then)) expect(done.slice(0, done.indexOf(then)), then).toContain(first);
        };
        doneBefore('weigh', 'takeIn');
        doneBefore('countIn', 'takeIn');
        doneBefore('lookAtPapers', 'takeIn');
        doneBefore('tag', 'takeIn');
        doneBefore('declare', 'handOver');
        doneBefore('weighOut', 'declare');
        if (done.includes('takeIn')) {
          doneBefore('countOut', 'declare');
          if (fate.secondCheck) doneBefore('checkIn', 'takeIn');
          if (fate.late) doneBefore('ask acceptLate', 'takeIn');
          if (fate.short) doneBefore('ask useWithout', 'takeIn');
        }
        const said = [...(fate.late ? [fate.answers[0]] : []), ...(fate.short ? [fate.answers[1]] : [])];
        if (!fate.lenderSaysNo) expect(done.includes('takeIn')).toBe(!said.includes('no'));
        expect(['refused', 'goneBack']).toContain(loan.state);
      }),
      { numRuns: 500 },
    );
  });

  it.each<[string, Partial<LoanFacts>, LoanNext]>([
    ['late, and nobody was asked', { late: true }, { do: 'ask', question: 'acceptLate' }],
    [
      'late, asked, not answered',
      { late: true, questions: [{ kind: 'acceptLate', answer: null }] },
      { do: 'awaitAnswer', question: 'acceptLate' },
    ],
    [
      'a person said no',
      { late: true, questions: [{ kind: 'acceptLate', answer: 'no' }] },
      { do: 'sendBack' },
    ],
    ['nobody looked for the instructions', { declaration: 'present' }, { do: 'lookAtPapers' }],
  ])('while it is here: %s', (_why, change, next) => {
    expect(nextStep({ ...fresh, state: 'here', ...change })).toEqual(next);
  });

  it('a tray that was used is decontaminated before hands go into it; one that nothing was done to goes as it came', () => {
    const going = (step: 'comingBack' | 'onBench' | 'held', touched: boolean) =>
      nextStep({
        ...fresh,
        state: 'goingBack',
        listed: true,
        counting: { in: 'done', out: 'count' },
        trays: [{ tray: 1, weighedIn: true, weighedOut: false, set: { step, touched } }],
      });
    expect(going('comingBack', true)).toEqual({ do: 'decontaminate', tray: 1 });
    expect(going('held', true)).toEqual({ do: 'decontaminate', tray: 1 });
    expect(going('onBench', true)).toEqual({ do: 'countOut' });
    expect(going('held', false)).toEqual({ do: 'countOut' });
  });

  it('what is not needed any more and has not come is called off', () => {
    for (const state of ['asked', 'confirmed'] as const)
      expect(nextStep({ ...fresh, state, timeToGo: true })).toEqual({ do: 'callOff' });
  });

  it('missing papers are asked for before anything else while it is in use', () => {
    expect(
      nextStep({ ...fresh, state: 'inService', declaration: 'missing', instructions: 'present' }),
    ).toEqual({
      do: 'getPapers',
    });
  });

  it('every state but the last ones leads on, and no state leads back', () => {
    for (const state of loanState.options)
      for (const to of NEXT_LOAN_STATES[state]) expect(NEXT_LOAN_STATES[to]).not.toContain(state);
    expect(loanState.options.filter((state) => NEXT_LOAN_STATES[state].length === 0)).toEqual([
      'refused',
      'calledOff',
      'goneBack',
    ]);
  });
});

import type { WorkingStep } from '@/lib/calculations/calculation';
import type { SetTurnaroundOutput } from '@/lib/calculations/setTurnaround/output';
import type { SetTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import type { CalculationWords } from './calculations';
import { countWord, listWords } from './numbers';

export const setTurnaroundDescription: CalculationWords = {
  title: 'Set turnaround',
  question: 'Which set goes to which case, who goes without and why, and what could be done about it?',
  formula: [
    'A set is away from start − lead up to, but not at, end + turn; it is never at two cases at once',
    'Copies needed = largest number of such stretches that overlap',
    'Minimise, in this order: fixed promises not kept; cases unserved, the most urgent first; cost of promises moved; minutes of wanted margin lacking; penalties of the ways taken',
    'Turn, half of the time = Σ P50 of its stages; nine times in ten = Σ P50 + √Σ (P90 − P50)², or Σ P90 where stages are long together',
  ],
  assumptions: [
    'Instants are milliseconds since 1970: zones and clock changes are dealt with before.',
    'A case is served by all parts of one of its ways or not at all; a more urgent case outweighs any number of less urgent ones.',
    'What a set holds is in the ways: a short set is listed where the case does not need what it lacks.',
    'A set that is back serves again what it is listed for; a pouch is used up.',
    'Copies needed are for the first way of each case.',
    'A set of which nobody knows when it is ready is promised to nobody.',
    'Slips keep the rest of the plan as it is; in order, each case waits for the sets it can have first.',
    'It proposes; people decide. No set and no implant is swapped by it.',
  ],
  sources: [
    {
      text: 'As many copies as intervals overlap are needed, and enough: Kleinberg & Tardos, Algorithm Design (2005), 4.1, interval partitioning',
      fromMemory: true,
    },
    {
      text: 'Cliques of intervals as rows are an interval matrix with whole corners: Fulkerson & Gross, Pacific J. Math. 15 (1965) 835–855',
      fromMemory: true,
    },
    {
      text: 'HiGHS, for the integer programme: Huangfu & Hall, Math. Prog. Comp. 10 (2018) 119–142',
      fromMemory: true,
    },
    { text: 'Order of aims: common practice, no source' },
  ],
};

/** Sentences of the input's faults and of the working. */
export const setTurnaroundWords = {
  duplicate: (name: string) => `“${name}” is given twice: give each its own name, or join the two.`,
  promisedTwice: (one: string, set: string) => `${set} is promised to ${one} twice: leave one out.`,
  noSuch: (what: string, name: string) => `There is no ${what} “${name}”: add it, or correct the name.`,
  endsFirst: 'A case ends after it starts.',
  namesNothing: 'A part names a set or a configuration that serves.',
  quicker: 'What holds nine times in ten is not sooner than what holds half of the time.',
  readyMissing: (set: string) => `when ${set} will be ready`,
  working(answer: SetTurnaroundOutput, input: SetTurnaroundInput): WorkingStep[] {
    const { proof, earliestFree, movedPromises, unserved } = answer;
    return [
      {
        label: 'Cases and sets',
        expression: `${input.cases.length} ${input.cases.length === 1 ? 'case' : 'cases'}, ${input.sets.length} ${input.sets.length === 1 ? 'set' : 'sets'}`,
        value: `${answer.served} of ${answer.of} served`,
      },
      ...answer.copies.map(({ configurations, needed, present, cases }) => ({
        label: `Copies of ${listWords(configurations, 'or')}`,
        expression:
          cases.length === 0
            ? 'no case'
            : `${listWords(cases.slice(0, 6))}${cases.length > 6 ? ' …' : ''} overlap`,
        value: `${needed} needed, ${present} there`,
      })),
      ...unserved.map(({ case: one, slipMinutes }) => ({
        label: `${one} goes without`,
        expression: 'every set it could have is away or not ready',
        value: slipMinutes === null ? 'no slip helps' : `${slipMinutes} min later`,
      })),
      {
        label: 'Promises moved',
        expression:
          movedPromises.length === 0 ? 'all kept' : listWords(movedPromises.map(({ case: one }) => one)),
        value: String(movedPromises.length),
      },
      {
        label: 'Rule of thumb',
        expression: 'each takes what has been free longest',
        value: `${earliestFree.served} served`,
      },
      {
        label: proof.kind === 'optimal' ? 'Proven best' : 'Best found',
        expression:
          proof.kind === 'optimal'
            ? 'no plan is better in one aim and as good in those before it'
            : `at most ${countWord(proof.servedAtMost)} could be served`,
        value: String(answer.served),
      },
    ];
  },
};

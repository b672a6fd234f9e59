import type { BuildableOutput } from '@/lib/calculations/buildable/schema';
import type { WorkingStep } from '@/lib/calculations/calculation';
import type { FewestTraysOutput } from '@/lib/calculations/fewestTrays/schema';
import type { CalculationWords } from './calculations';
import { countWord, listWords } from './numbers';

/** What `buildable` and `fewest-trays` say of themselves. */
export const kitCalculationWords = {
  'fewest-trays': {
    title: 'Fewest trays',
    question:
      'Which sets to open and which packs to fetch so that everything the plan needs is there and fits together?',
    formula: [
      'Minimise, in this order: must-haves short, back-ups short, trays, single packs, millimetres longer than stated, sets promised to this case before others and those promised to other cases last, days to use-by, grams, metres',
      'so that each chain has a candidate at hand in every slot with all its links fitting, and each piece asked for has one of its own (matching)',
      'Exact search with a lower bound; what it gives up is solved as an integer programme from the best answer known',
    ],
    assumptions: [
      'Opening or fetching more never makes a line short, so what everything together meets can be met.',
      'Instruments are used again for every step; pieces that stay are used up.',
      'A tray of unknown mass is counted as 12 kg, one without a use-by as ten years.',
      'Sets that the lines cannot tell apart are interchangeable.',
    ],
    sources: [
      { text: 'Order of aims: common practice, no source' },
      {
        text: 'HiGHS, for the integer programme: Huangfu & Hall, Math. Prog. Comp. 10 (2018) 119–142',
        fromMemory: true,
      },
    ],
  },
  buildable: {
    title: 'Buildable',
    question: 'Can this construct be built from what is there, and if not, what stops which step?',
    formula: [
      'A chain closes when each slot has an item at hand such that every link fits',
      'Pieces: largest matching between steps and sound pieces',
      'Spare of a step = smallest number of pieces whose loss stops it, less one',
    ],
    assumptions: [
      'Only sound pieces count.',
      'An answer that is not established is never a fit.',
      'No other implant is ever offered.',
    ],
    sources: [{ text: 'Which chain a step needs: domain knowledge, common practice, no source' }],
  },
} satisfies Record<string, CalculationWords>;

/** Sentences of both calculations. */
export const coverLinesWords = {
  duplicate: (name: string) => `“${name}” is given twice: give each its own name, or join the two.`,
  noSuchSlot: (slots: number) => `A link joins two different slots, counted from 0 to ${slots - 1}.`,
  ring: 'These links make a ring: leave one out, so that slots and links form a tree.',
  noSuchChain: (chain: string) => `There is no chain “${chain}”: add it to the chains, or correct the name.`,
  pairRefused: (first: string, second: string) => `${first} and ${second} do not fit each other.`,
  pairOpen: (first: string, second: string) => `whether ${first} and ${second} fit each other`,
  chainBlocked: (chain: string, steps: string[], ways: string[][]) =>
    `${chain} stops ${listWords(steps)}: ${waysWords(ways)}.`,
  pieceBlocked: (step: string, ways: string[][]) =>
    `${step} has no piece of its own: it takes ${listWords(
      ways.map(([item]) => item ?? ''),
      'or',
    )}.`,
  working(answer: FewestTraysOutput, lines: number, sets: number): WorkingStep[] {
    const { proof } = answer;
    return [
      {
        label: 'Lines and sets',
        expression: `${lines} ${lines === 1 ? 'line' : 'lines'}, ${sets} ${sets === 1 ? 'set' : 'sets'}`,
        value: `${answer.short.length} short`,
      },
      {
        label: 'Rule of thumb',
        expression: 'the tray that helps most next',
        value: String(answer.greedyTrays),
      },
      {
        label: proof.kind === 'optimal' ? 'Proven fewest' : 'Best found',
        expression:
          proof.kind === 'gap'
            ? `at least ${proof.lowerBoundTrays}`
            : proof.by === 'search'
              ? 'every choice of fewer trays leaves a line short'
              : 'integer programme, gap 0',
        value: String(answer.trays),
      },
    ];
  },
  buildableWorking(answer: BuildableOutput): WorkingStep[] {
    return [
      {
        label: 'Steps possible',
        expression: `${answer.stepsPossible} of ${answer.steps}`,
        value: answer.buildable,
      },
      ...answer.blocked.map(({ name, steps, sentence }) => ({
        label: name,
        expression: sentence,
        value: `${steps.length} stopped`,
      })),
    ];
  },
};

function waysWords(ways: string[][]): string {
  if (ways.length === 0) return 'nothing in the catalogue closes it';
  const written = ways.map((items) =>
    items.length === 1 ? (items[0] ?? '') : `${listWords(items)} together`,
  );
  return ways.length === 1
    ? `${written[0]} would do`
    : `any ${countWord(1)} of these would do: ${written.join('; ')}`;
}

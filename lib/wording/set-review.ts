import type { WorkingStep } from '@/lib/calculations/calculation';
import type {
  Comparison,
  LineReview,
  LineVerdict,
  SetReviewInput,
} from '@/lib/calculations/setReview/schema';
import { writePence } from '@/lib/quantities/money';
import type { CalculationWords } from './calculations';
import { percentWord } from './numbers';

export const setReviewDescription: CalculationWords = {
  title: 'Set review',
  question: 'Does each line of a set earn its place, and how sure can so many cases make us?',
  formula: [
    'Use rate = cases with a use k ÷ cases n',
    'Upper bound = the beta quantile of the confidence at (k + 1, n − k); with k = 0 it is 1 − (1 − confidence)^(1/n)',
    'Keeping = pence for a piece and turn × pieces kept',
    'Not keeping = rate × (pieces of a case with a use × pouch + minutes of waiting × pence for a minute), at the rate seen and at the bound',
    'Smallest quantity = least q with P(demand > q) ≤ risk: as seen, by a Poisson or negative binomial distribution, and at the bound',
  ],
  assumptions: [
    'Cases are alike and do not depend on one another.',
    'What was asked for and not there counts only where somebody recorded it.',
    'The fitted distribution is Poisson; negative binomial, by moments, where the cases vary more than that.',
    'A back-up (class 3) is protected whatever its figures say. Nothing is removed by this: a person proposes a new version.',
    'A case that uses none still pays for keeping; one that uses some fetches as many as such cases have used.',
  ],
  sources: [
    { text: 'C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404–413', fromMemory: true },
    {
      text: '13.0–21.9 % of instruments used, at least $0.51 each: Stockert & Langerman, J Am Coll Surg 2014;219:646',
    },
    { text: 'A pouch rather than a tray below 0.42–0.56 uses a case: Mhlaba et al., J Hosp Admin 2015' },
    { text: 'What keeping, pouching and waiting cost: the hospital’s own settings' },
  ],
};

/** In a word or two, for a table. */
export const LINE_VERDICT_WORDS: Record<LineVerdict, string> = {
  protected: 'back-up, protected',
  keep: 'earns its place',
  keepIfFetched: 'keep if it must be fetched',
  notShown: 'too few cases to tell',
  pouch: 'costs less as a pouch',
};

const DEMAND_MODEL_WORDS = { poisson: 'Poisson', negativeBinomial: 'negative binomial' } as const;

const range = (lowest: number, highest: number) =>
  `${(lowest * 100).toFixed(1)}–${(highest * 100).toFixed(1)} %`;

const STANDS: Record<Comparison['stands'], string> = {
  below: 'below',
  within: 'within',
  above: 'above',
};

type CostField = 'keepPencePerPiece' | 'pouchPence' | 'fetchMinutes' | 'theatrePencePerMinute';

export const setReviewWords = {
  noCases: 'at least one case that such a set was in',
  usesMissing: (line: string) => `in how many cases ${line} was used`,
  costsMissing: [
    { field: 'keepPencePerPiece', what: 'what keeping one piece for a turn costs' },
    { field: 'pouchPence', what: 'what one pouch costs' },
    { field: 'fetchMinutes', what: 'how long a case waits for a pouch' },
    { field: 'theatrePencePerMinute', what: 'what a minute of waiting costs' },
  ] satisfies { field: CostField & keyof SetReviewInput; what: string }[],
  piecesTwice: (line: string) => `The same number of pieces is given twice for “${line}”: add the cases up.`,
  moreUsesThanCases: (line: string, uses: number, cases: number) =>
    `“${line}” has ${uses} cases with a use, but there were only ${cases} cases: correct one of the two.`,
  shareComparison: (stands: Comparison['stands'], lowest: number, highest: number) =>
    `${STANDS[stands]} the published ${range(lowest, highest)} of instruments used`,
  pouchComparison: (stands: Comparison['stands'], lowest: number, highest: number) =>
    `${STANDS[stands]} the published ${range(lowest, highest)} under which a pouch cost less than a tray`,
  sentence(facts: {
    verdict: LineVerdict | null;
    uses: number;
    cases: number;
    bound: number;
    confidence: number;
  }): string {
    const { uses, cases, bound, confidence } = facts;
    const used = `Used in ${uses} of ${cases} ${cases === 1 ? 'case' : 'cases'}`;
    const atMost = `at most ${percentWord(bound)} with ${percentWord(confidence, 0)} confidence`;
    switch (facts.verdict) {
      case null:
        return `${used}, ${atMost}; what it costs is not established.`;
      case 'protected':
        return `${used}, ${atMost}; it is a back-up, and stays.`;
      case 'keep':
        return `${used}; keeping it costs no more than going without.`;
      case 'keepIfFetched':
        return `${used}, ${atMost}; a pouch in the room would cost less, one that must be fetched might not.`;
      case 'notShown':
        return `${used}, ${atMost}; a pouch looks cheaper, but so few cases do not show it.`;
      case 'pouch':
        return `${used}, ${atMost}; a pouch costs less even then.`;
    }
  },
  working(line: LineReview, cases: number, confidence: number): WorkingStep[] {
    const { uses, fetched, inRoom, keepPence } = line;
    const money = (pence: number | null) => (pence === null ? 'not established' : writePence(pence));
    return [
      {
        label: `${line.line}: use rate`,
        expression: `${uses} ÷ ${cases}`,
        value: line.useRate.toFixed(4),
      },
      {
        label: `${line.line}: upper bound`,
        expression:
          uses === 0
            ? `1 − ${(1 - confidence).toFixed(3)}^(1/${cases})`
            : `beta quantile of ${confidence} at (${uses + 1}, ${cases - uses})`,
        value: line.upperBound.toFixed(4),
      },
      {
        label: `${line.line}: for each case`,
        expression: `kept ${money(keepPence)}; fetched ${money(fetched.penceAtEstimate)} to ${money(fetched.penceAtBound)}; in the room ${money(inRoom.penceAtEstimate)} to ${money(inRoom.penceAtBound)}`,
        value: line.verdict === null ? 'not established' : LINE_VERDICT_WORDS[line.verdict],
      },
      ...(line.model === null || line.runsOut.fitted === null
        ? []
        : [
            {
              label: `${line.line}: more asked for than is kept`,
              expression: `${DEMAND_MODEL_WORDS[line.model.kind]}, mean ${line.model.mean.toFixed(3)}, variance ${line.model.variance.toFixed(3)}`,
              value: line.runsOut.fitted.toExponential(2),
            },
          ]),
    ];
  },
};

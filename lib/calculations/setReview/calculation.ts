import { setReviewDescription } from '@/lib/wording/set-review';
import { defineCalculation } from '../calculation';
import { checkSetReview, setReviewInput, setReviewOutput } from './schema';
import { setReview } from './setReview';

export const setReviewCalculation = defineCalculation({
  name: 'set-review',
  ...setReviewDescription,
  input: setReviewInput,
  output: setReviewOutput,
  example: {
    cases: 60,
    keepPencePerPiece: 40,
    pouchPence: 84,
    fetchMinutes: 3,
    theatrePencePerMinute: 2_000,
    lines: [
      {
        line: 'Pointed forceps, large',
        quantity: 1,
        mustHaveClass: 4,
        pouchInRoom: false,
        usedIn: [{ pieces: 1, cases: 9 }],
      },
      { line: 'Bending pliers', quantity: 1, mustHaveClass: 4, usedIn: [] },
      { line: 'Pilot bit 2.5, second', quantity: 1, mustHaveClass: 3, usedIn: [] },
      {
        line: 'Cortical screw 3.5 × 16',
        quantity: 4,
        mustHaveClass: 2,
        usedIn: [
          { pieces: 1, cases: 14 },
          { pieces: 2, cases: 6 },
          { pieces: 3, cases: 1 },
        ],
      },
    ],
  },
  check: checkSetReview,
  run: setReview,
});

import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import { solveTurnaround } from '@/lib/turnaround/solve';
import { costOf, faultsOf, leastCost } from './byTrying';
import { smallList } from './smallLists';

// properties look at thousands of lists
vi.setConfig({ testTimeout: 300_000 });

const options = { solver: highsSolver, timeLimitMs: 60_000 };

describe('the plan', () => {
  it('is the best that looking at every plan finds, on every aim', async () => {
    await fc.assert(
      fc.asyncProperty(smallList, async (problem) => {
        const solved = await solveTurnaround(problem, options);
        expect(faultsOf(problem, solved.plan)).toEqual([]);
        expect(costOf(problem, solved.plan)).toEqual(leastCost(problem));
        expect(solved.aims).toEqual(costOf(problem, solved.plan));
        expect(solved.proof).toEqual({ kind: 'optimal' });
      }),
      { numRuns: 2000 },
    );
  });
});

import { recallWords } from '../wording/recall';
import { traceWords } from '../wording/trace';
import type { LotTrace } from './lotTrace';
import type { ReachedCase } from './recall';

/** The cases of a lot, with their reasons in words. */
export const lotCases = (
  { cases, lot }: Pick<LotTrace, 'cases' | 'lot'>,
  codeOf: (setId: string) => string,
): ReachedCase[] =>
  cases.map(({ caseId, lo, hi, standing, parts }) => ({
    caseId,
    lo,
    hi,
    standing,
    reasons: parts.flatMap(({ setId, outcome, why }) =>
      why.map((one) =>
        recallWords.reason(setId === null ? null : codeOf(setId), outcome, traceWords.why(one, lot)),
      ),
    ),
  }));

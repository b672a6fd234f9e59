import type { ServedRows } from '@/app/_ui/served-rows';
import type { CasesSeen } from '@/db/queries/trace/lot';
import type { ReachedCaseRow } from './case-columns';

/** Cases of a trace or a recall as the table takes them. */
export const servedCases = (cases: CasesSeen | null): ServedRows<ReachedCaseRow> => ({
  rows: cases?.rows ?? [],
  found: cases?.counts.total ?? 0,
  total: cases?.counts.total ?? 0,
});

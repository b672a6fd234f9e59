import type { ServedRows } from '@/app/_ui/served-rows';
import type { LotCasesSeen } from '@/db/queries/trace/lot';
import type { ReachedCaseRow } from './case-columns';

/** Cases of a lot as the table takes them. */
export const servedLotCases = (cases: LotCasesSeen | null): ServedRows<ReachedCaseRow> => ({
  rows: cases?.rows ?? [],
  found: cases?.counts.total ?? 0,
  total: cases?.counts.total ?? 0,
});

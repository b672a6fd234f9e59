import type { NamedCase } from '@/db/queries/trace/lot';
import type { ReachedCase } from '@/lib/trace/recall';
import type { ReachedCaseRow } from './case-columns';

/** Reached cases with their references, dates and surgeons, as the table takes them. */
export function caseRows(
  reached: readonly ReachedCase[],
  named: ReadonlyMap<string, NamedCase>,
): ReachedCaseRow[] {
  return reached.flatMap(({ caseId, lo, hi, standing, reasons }) => {
    const one = named.get(caseId);
    return one ? [{ ...one, lo, hi, standing, reasons }] : [];
  });
}

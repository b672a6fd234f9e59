import {
  type CaseOrdering,
  type CasePageAsked,
  caseCounts,
  casePage,
  casesInOrder,
} from '@/lib/trace/casePage';
import type { SeenCase } from '@/lib/trace/recall';
import type { Queries } from '../../client';
import { type CasesSeen, namesOfCases } from './lot';

/** Which of the cases: a page of them, or all in an order. */
export type CasesAsked = CasePageAsked | { all: CaseOrdering };

/** Cases that something reached, by the names they go by: one page, or all; the newest of each standing first. */
export function casesSeen(read: Queries, reached: readonly SeenCase[], asked: CasesAsked): CasesSeen {
  const names = namesOfCases(
    read,
    reached.map(({ caseId }) => caseId),
  );
  const known = reached.flatMap((one) => {
    const named = names.get(one.caseId);
    return named ? [{ ...one, ...named, lastAtMs: Date.parse(named.date) }] : [];
  });
  const rows =
    'all' in asked ? casesInOrder(known, asked.all, () => names) : casePage(known, asked, () => names);
  return { rows: rows.map(({ caseId: _, lastAtMs: _at, ...row }) => row), counts: caseCounts(known) };
}

import type { CaseTraced } from './lotTrace';
import type { Standing } from './slotBounds';

export const CASES_A_PAGE = 50;

/** What the cases of a trace can be put in order by; `first`: confirmed, then possible, then excluded, and of each the newest first. */
export const CASE_ORDERS = ['first', 'reference', 'date', 'surgeon', 'standing'] as const;
export type CaseOrder = (typeof CASE_ORDERS)[number];

export interface CaseOrdering {
  order: CaseOrder;
  isDescending: boolean;
}

/** Which page is asked for, counted from 1; the last where there are not so many. */
export interface CasePageAsked extends CaseOrdering {
  page: number;
}

/** The order in which a recall looks at them. */
export const AS_LOOKED_AT: CaseOrdering = { order: 'first', isDescending: false };
export const FIRST_CASES: CasePageAsked = { ...AS_LOOKED_AT, page: 1 };

/** Confirmed, possible, excluded. */
export const STANDING_ORDER: Record<Standing, number> = { confirmed: 0, possible: 1, excluded: 2 };

/** How many cases stand in each way, and how many there are. */
export interface CaseCounts extends Record<Standing, number> {
  total: number;
}

export function caseCounts(cases: readonly Pick<CaseTraced, 'standing'>[]): CaseCounts {
  const counts = { total: cases.length, confirmed: 0, possible: 0, excluded: 0 };
  for (const { standing } of cases) counts[standing] += 1;
  return counts;
}

/** Of a case whose pieces are not shown, `hi` is not told, and gives it no place before others. */
type Ordered = Pick<CaseTraced, 'caseId' | 'standing' | 'lastAtMs'> & { hi: number | null };
type Names = { reference: string; date: string; surgeon: string | null };

const collator = new Intl.Collator('en-GB', { numeric: true, sensitivity: 'base' });

/**
 * Puts cases in order and cuts out one page. `first` and `standing` are told from the trace alone: confirmed, then possible,
 * then excluded, and of each those first whose pieces left last. Unknown values come last both ways.
 *
 * @param named of every case; asked for only where the order is by what a case is called
 */
export function casePage<Case extends Ordered>(
  cases: readonly Case[],
  { page, ...ordering }: CasePageAsked,
  named: () => ReadonlyMap<string, Names>,
): Case[] {
  const sorted = casesInOrder(cases, ordering, named);
  const last = Math.max(1, Math.ceil(sorted.length / CASES_A_PAGE));
  const at = Math.min(Math.max(1, page), last);
  return sorted.slice((at - 1) * CASES_A_PAGE, at * CASES_A_PAGE);
}

/** As `casePage`, and all of them. */
export const casesInOrder = <Case extends Ordered>(
  cases: readonly Case[],
  { order, isDescending }: CaseOrdering,
  named: () => ReadonlyMap<string, Names>,
): Case[] => [...cases].sort(comparing(order, isDescending, named));

function comparing(order: CaseOrder, isDescending: boolean, named: () => ReadonlyMap<string, Names>) {
  const newest = (a: Ordered, b: Ordered) => b.lastAtMs - a.lastAtMs || (a.caseId < b.caseId ? -1 : 1);
  const standing = (a: Ordered, b: Ordered) => STANDING_ORDER[a.standing] - STANDING_ORDER[b.standing];
  const way = isDescending ? -1 : 1;
  switch (order) {
    case 'first':
      return (a: Ordered, b: Ordered) => standing(a, b) || newest(a, b);
    case 'standing':
      return (a: Ordered, b: Ordered) => way * (standing(a, b) || (b.hi ?? 0) - (a.hi ?? 0)) || newest(a, b);
    case 'reference':
    case 'date':
    case 'surgeon': {
      const names = named();
      return (a: Ordered, b: Ordered) => {
        const [one, other] = [names.get(a.caseId)?.[order] ?? null, names.get(b.caseId)?.[order] ?? null];
        if (one === null || other === null)
          return Number(one === null) - Number(other === null) || newest(a, b);
        return way * collator.compare(one, other) || newest(a, b);
      };
    }
  }
}

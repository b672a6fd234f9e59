import { servedQuery } from '@/app/_ui/served-rows';
import { CASE_ORDERS, type CasePageAsked, FIRST_CASES } from '@/lib/trace/casePage';
import { recallOf } from '@/lib/trace/recall';

/** What of the address the cases of a lot are served by. */
export const LOT_CASES_NAMES = ['item', 'lot', 'cases-sort', 'cases-page'] as const;

interface LotCasesAsked {
  /** `null`: no lot of an item. */
  of: { itemId: string; lot: string } | null;
  cases: CasePageAsked;
  /** The same as an address has it. */
  query: string;
}

/** The lot an address asks for, and which page of its cases in which order. */
export function lotCasesAsked(params: Pick<URLSearchParams, 'get'>): LotCasesAsked {
  const of = recallOf.safeParse({ kind: 'lot', itemId: params.get('item'), lot: params.get('lot') });
  const sort = params.get('cases-sort') ?? '';
  const page = Number.parseInt(params.get('cases-page') ?? '1', 10);
  const order = CASE_ORDERS.find((one) => one === sort.replace(/^-/, ''));
  return {
    of: of.success && of.data.kind === 'lot' ? { itemId: of.data.itemId, lot: of.data.lot } : null,
    cases: {
      ...(order === undefined ? FIRST_CASES : { order, isDescending: sort.startsWith('-') }),
      page: Number.isFinite(page) && page > 0 ? page : 1,
    },
    query: servedQuery(LOT_CASES_NAMES, (name) => params.get(name)),
  };
}

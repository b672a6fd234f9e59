import { servedQuery } from '@/app/_ui/served-rows';
import { recallId } from '@/lib/identity/ids';
import { CASE_ORDERS, type CasePageAsked, FIRST_CASES } from '@/lib/trace/casePage';
import { type RecallOf, recallOf } from '@/lib/trace/recall';

/** What of the address cases are served by: what they are the cases of, their order and the page. */
export const CASES_NAMES = ['item', 'lot', 'set', 'load', 'recall', 'cases-sort', 'cases-page'] as const;

interface CasesAskedFor {
  /** `null`: of nothing that has an id. */
  of: RecallOf | { kind: 'recall'; recallId: string } | null;
  cases: CasePageAsked;
  /** The same as an address has it. */
  query: string;
}

/** What an address asks for the cases of, and which page of them in which order. */
export function casesAsked(params: Pick<URLSearchParams, 'get'>): CasesAskedFor {
  const sort = params.get('cases-sort') ?? '';
  const page = Number.parseInt(params.get('cases-page') ?? '1', 10);
  const order = CASE_ORDERS.find((one) => one === sort.replace(/^-/, ''));
  return {
    of: ofAddress(params),
    cases: {
      ...(order === undefined ? FIRST_CASES : { order, isDescending: sort.startsWith('-') }),
      page: Number.isFinite(page) && page > 0 ? page : 1,
    },
    query: servedQuery(CASES_NAMES, (name) => params.get(name)),
  };
}

function ofAddress(params: Pick<URLSearchParams, 'get'>): CasesAskedFor['of'] {
  const recall = recallId.safeParse(params.get('recall'));
  if (recall.success) return { kind: 'recall', recallId: recall.data };
  const [item, lot] = [params.get('item'), params.get('lot')];
  const asked =
    item === null
      ? params.get('set') === null
        ? { kind: 'load', loadId: params.get('load') }
        : { kind: 'set', setId: params.get('set') }
      : lot === null
        ? { kind: 'item', itemId: item }
        : { kind: 'lot', itemId: item, lot };
  const of = recallOf.safeParse(asked);
  return of.success ? of.data : null;
}

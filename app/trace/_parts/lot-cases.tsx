'use client';

import { useSearchParams } from 'next/navigation';
import { DataTable } from '@/app/_ui/data-table';
import { NotAnswered } from '@/app/_ui/not-answered';
import { type ServedRows, servedQuery } from '@/app/_ui/served-rows';
import { useServed } from '@/app/_ui/use-served';
import { AS_CASES, type ReachedCaseRow } from './case-columns';
import { LOT_CASES_NAMES } from './lot-cases-asked';

/**
 * The cases of a lot, which may be thousands: put in order and cut by the server. At first as a recall looks at them: confirmed,
 * then possible, then excluded, and of each those first whose pieces left last.
 */
export function LotCases({
  caption,
  first,
  firstQuery,
}: {
  caption: string;
  first: ServedRows<ReachedCaseRow>;
  firstQuery: string;
}) {
  const params = useSearchParams();
  const query = servedQuery(LOT_CASES_NAMES, (name) => params.get(name));
  const { answer, failed } = useServed('/api/v1/trace/cases', query, first, firstQuery);
  return (
    <>
      {failed ? <NotAnswered /> : null}
      <DataTable {...AS_CASES} caption={caption} rows={answer.rows} served={{ total: answer.found }} />
    </>
  );
}

'use client';

import { useSearchParams } from 'next/navigation';
import { DataTable } from '@/app/_ui/data-table';
import { NotAnswered } from '@/app/_ui/not-answered';
import { type ServedRows, servedQuery } from '@/app/_ui/served-rows';
import { useServed } from '@/app/_ui/use-served';
import { AS_CASES, type ReachedCaseRow } from './case-columns';
import { CASES_NAMES } from './cases-asked';

/**
 * The cases that a trace or a recall reaches, which may be thousands: put in order and cut by the server. At first as a recall
 * looks at them: confirmed, then possible, then excluded, and of each the newest first.
 *
 * @param recall its id, where the address does not ask for it by its parameters
 */
export function TracedCases({
  caption,
  recall = null,
  first,
  firstQuery,
}: {
  caption: string;
  recall?: string | null;
  first: ServedRows<ReachedCaseRow>;
  firstQuery: string;
}) {
  const params = useSearchParams();
  const query = servedQuery(CASES_NAMES, (name) => (name === 'recall' ? recall : params.get(name)));
  const { answer, failed } = useServed('/api/v1/trace/cases', query, first, firstQuery);
  return (
    <>
      {failed ? <NotAnswered /> : null}
      <DataTable {...AS_CASES} caption={caption} rows={answer.rows} served={{ total: answer.found }} />
    </>
  );
}

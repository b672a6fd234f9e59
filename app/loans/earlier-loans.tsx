'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { LoanState } from '@/lib/loans/states';
import { LOAN_STATE_TONES, LOAN_STATE_WORDS } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';

interface Row {
  id: string;
  number: string;
  state: LoanState;
  lender: string;
  askedFor: string;
  came: string | null;
  punctual: string | null;
}

const columns: Column<Row>[] = [
  { id: 'number', header: 'Loan', value: (row) => row.number, width: 'code' },
  {
    id: 'state',
    header: 'State',
    value: (row) => row.state,
    cell: (row) => (
      <Status tone={LOAN_STATE_TONES[row.state]} look="plain">
        {capitalised(LOAN_STATE_WORDS[row.state])}
      </Status>
    ),
    width: 'fit',
  },
  { id: 'lender', header: 'Lender', value: (row) => row.lender, width: 'name' },
  { id: 'asked', header: 'Asked for', value: (row) => row.askedFor },
  { id: 'came', header: 'Came', value: (row) => row.came, width: 'fit' },
  { id: 'punctual', header: 'Against due', value: (row) => row.punctual, width: 'fit' },
];

/** Loans that are over, newest first. */
export function EarlierLoans({ rows }: { rows: readonly Row[] }) {
  return (
    <DataTable
      caption="Loans that are over"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/loans/${row.id}`}
      urlKey="over"
      sort="-number"
      empty="No loan of the last month is over."
    />
  );
}

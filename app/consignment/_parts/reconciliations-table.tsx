'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import { HOW_WORDS } from '@/lib/wording/reconciliation';

interface Row {
  id: string;
  number: string;
  how: 'list' | 'count';
  day: string;
  entered: string;
  enteredBy: string;
  isClosed: boolean;
  lots: number;
  unexplained: number;
}

const COLUMNS: Column<Row>[] = [
  { id: 'number', header: 'Reconciliation', value: (row) => row.number, width: 'code' },
  { id: 'how', header: 'By', value: (row) => HOW_WORDS[row.how] },
  { id: 'of', header: 'Of', value: (row) => row.number, cell: (row) => row.day, width: 'fit' },
  { id: 'lots', header: 'Lots', align: 'end', value: (row) => row.lots, width: 'fit' },
  { id: 'unexplained', header: 'Unexplained', align: 'end', value: (row) => row.unexplained, width: 'fit' },
  {
    id: 'stands',
    header: 'Stands',
    value: (row) => (row.isClosed ? 'Closed' : 'Not closed'),
    cell: (row) => (
      <Status tone={row.isClosed ? 'good' : 'attention'} look="plain">
        {row.isClosed ? 'Closed' : 'Not closed'}
      </Status>
    ),
    width: 'fit',
  },
  { id: 'entered', header: 'Entered', value: (row) => row.number, cell: (row) => row.entered, width: 'fit' },
  { id: 'by', header: 'Entered by', value: (row) => row.enteredBy },
];

/** The reconciliations with one owner, the newest first. */
export function ReconciliationsTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="Reconciliations"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/consignment/reconciliations/${row.id}`}
      rowTone={(row) => (row.isClosed ? null : 'attention')}
      urlKey="reconciliations"
      sort="-number"
      empty="Their list was never set beside our record."
    />
  );
}

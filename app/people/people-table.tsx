'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';

interface Row {
  id: string;
  name: string;
  role: string;
  ways: string;
  seen: string | null;
  left: string | null;
}

const columns: Column<Row>[] = [
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'name' },
  { id: 'role', header: 'Role', value: (row) => row.role },
  {
    id: 'state',
    header: 'State',
    value: (row) => (row.left === null ? 'Works here' : 'Left'),
    cell: (row) =>
      row.left === null ? (
        <Status tone="good" look="plain">
          Works here
        </Status>
      ) : (
        <Status tone="neutral" look="plain">
          Left, {row.left}
        </Status>
      ),
  },
  { id: 'ways', header: 'Signs in by', value: (row) => (row.left === null ? row.ways : null) },
  { id: 'seen', header: 'Last seen', value: (row) => row.seen ?? 'never', sortable: false },
];

export function PeopleTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="People"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/people/${row.id}`}
      urlKey="people"
    />
  );
}

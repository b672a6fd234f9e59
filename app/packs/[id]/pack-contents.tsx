'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import { ClassMark } from '@/app/sets/_parts/class-mark';
import type { MustHaveClass } from '@/lib/sets/configuration';

interface Row {
  id: string;
  item: string;
  mustHaveClass: MustHaveClass;
  expected: number;
  found: number;
}

const columns: Column<Row>[] = [
  { id: 'item', header: 'Item', value: (row) => row.item, width: 'name' },
  {
    id: 'class',
    header: 'Class',
    value: (row) => row.mustHaveClass,
    cell: (row) => <ClassMark mustHaveClass={row.mustHaveClass} />,
  },
  { id: 'found', header: 'Found', align: 'end', value: (row) => row.found },
  { id: 'expected', header: 'Expected', align: 'end', value: (row) => row.expected },
  {
    id: 'short',
    header: 'Short',
    align: 'end',
    value: (row) => row.expected - row.found,
    cell: (row) =>
      row.found < row.expected ? (
        <Status tone="attention" look="plain">
          {String(row.expected - row.found)}
        </Status>
      ) : (
        '–'
      ),
  },
];

/** The lines of a set as they were when it was closed. */
export function PackContents({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="Lines of the set when it was closed"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      urlKey="contents"
    />
  );
}

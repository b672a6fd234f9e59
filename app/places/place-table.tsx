'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { PlaceOnFile } from '@/db/queries/places';

const columns: Column<PlaceOnFile>[] = [
  { id: 'name', header: 'Place', value: (row) => row.name },
  { id: 'sets', header: 'Sets', align: 'end', value: (row) => row.sets },
  { id: 'stock', header: 'Lines of stock', align: 'end', value: (row) => row.stockLines },
  { id: 'metres', header: 'Walk from the pick bench', unit: 'm', align: 'end', value: (row) => row.metres },
  {
    id: 'use',
    header: 'Use',
    value: (row) => (row.withdrawnAt === null ? 'in use' : 'out of use'),
    cell: (row) => (
      <Status tone={row.withdrawnAt === null ? 'good' : 'neutral'} look="plain">
        {row.withdrawnAt === null ? 'in use' : 'out of use'}
      </Status>
    ),
  },
];

/** Every place with what lies there. */
export function PlaceTable({ places }: { places: PlaceOnFile[] }) {
  return (
    <DataTable
      caption="Places"
      hideCaption
      columns={columns}
      rows={places}
      rowKey={(row) => row.id}
      rowHref={(row) => `/places/${row.id}`}
      urlKey="places"
      sort="name"
      empty="No place is entered yet."
    />
  );
}

'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { FilterBar } from '@/app/_ui/filter-bar';
import { SearchField } from '@/app/_ui/search-field';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import type { ConfigurationRow } from '@/db/queries/configurations';

const columns: Column<ConfigurationRow>[] = [
  { id: 'code', header: 'Code', value: (row) => row.code, width: 'fit' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  {
    id: 'inForce',
    header: 'In force',
    value: (row) => row.inForce?.version ?? 0,
    cell: (row) =>
      row.withdrawnAt ? (
        <Status tone="neutral">out of use</Status>
      ) : row.inForce ? (
        <Status tone="good">{`version ${row.inForce.version}`}</Status>
      ) : (
        <Status tone="unknown">none yet</Status>
      ),
  },
  {
    id: 'draft',
    header: 'Draft',
    value: (row) => row.draft?.version ?? 0,
    cell: (row) =>
      row.draft ? (
        <Status tone="attention">{`version ${row.draft.version} in draft`}</Status>
      ) : row.approved ? (
        <Status tone="attention">{`version ${row.approved.version} from ${row.approved.from}`}</Status>
      ) : (
        'none'
      ),
  },
  { id: 'lines', header: 'Lines', align: 'end', value: (row) => row.inForce?.lines ?? 0 },
  { id: 'pieces', header: 'Pieces', align: 'end', value: (row) => row.inForce?.pieces ?? 0 },
  { id: 'sets', header: 'Sets', align: 'end', value: (row) => row.sets },
];

/** Every configuration, found by code or name. */
export function ConfigurationList({ rows }: { rows: ConfigurationRow[] }) {
  const [words, setWords] = useUrlParam('q');
  const wanted = words.toLowerCase().split(/\s+/);
  const shown = rows.filter(({ code, name }) =>
    wanted.every((word) => `${code} ${name}`.toLowerCase().includes(word)),
  );
  return (
    <>
      <FilterBar summary={`${shown.length} of ${rows.length} configurations`} label="Filter configurations">
        <SearchField name="q" label="Find" placeholder="code or name" value={words} onValue={setWords} />
      </FilterBar>
      <DataTable
        caption="Configurations"
        hideCaption
        columns={columns}
        rows={shown}
        rowKey={(row) => row.id}
        rowHref={(row) => `/configurations/${row.id}`}
        urlKey="configurations"
        sort="code"
        empty={
          rows.length === 0
            ? 'No configuration is entered yet: begin one with “New configuration”.'
            : 'No configuration matches.'
        }
      />
    </>
  );
}

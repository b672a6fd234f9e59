'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { LoadState } from '@/lib/loads/load';
import { LOAD_STATE_TONES, LOAD_STATE_WORDS } from '@/lib/wording/loads';
import { capitalised } from '@/lib/wording/numbers';
import { PackNames } from './pack-names';

interface Row {
  id: string;
  number: string;
  steriliser: string;
  started: string;
  startedWords: string;
  programme: string;
  packs: string[];
  state: LoadState;
  pending: number;
  byException: boolean;
}

const columns: Column<Row>[] = [
  { id: 'number', header: 'Load', value: (row) => row.number, width: 'code' },
  {
    id: 'state',
    header: 'State',
    value: (row) => row.state,
    cell: (row) => (
      <Status tone={LOAD_STATE_TONES[row.state]} look="plain">
        {capitalised(LOAD_STATE_WORDS[row.state])}
      </Status>
    ),
    width: 'fit',
  },
  {
    id: 'open',
    header: 'Still open',
    value: (row) => row.pending,
    cell: (row) =>
      row.pending > 0 ? `result pending${row.byException ? ', set out by exception' : ''}` : '–',
    width: 'phrase',
  },
  { id: 'steriliser', header: 'Steriliser', value: (row) => row.steriliser, width: 'fit' },
  {
    id: 'started',
    header: 'Started',
    value: (row) => row.started,
    cell: (row) => row.startedWords,
    width: 'fit',
  },
  { id: 'programme', header: 'Programme', value: (row) => row.programme, width: 'fit' },
  {
    id: 'packs',
    header: 'Packs',
    value: (row) => row.packs.length,
    cell: (row) => <PackNames names={row.packs} />,
  },
];

export function EarlierLoads({ rows }: { rows: readonly Row[] }) {
  return (
    <DataTable
      caption="Loads that were decided"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      rowHref={(row) => `/loads/${row.id}`}
      rowTone={(row) => LOAD_STATE_TONES[row.state]}
      urlKey="loads"
      sort="-started"
      pageSize={25}
      empty="No load was decided in these days."
    />
  );
}

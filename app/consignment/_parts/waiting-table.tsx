'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { WaitingLine } from '@/db/queries/consignment/owners';
import { KNOWN_BY_WORDS, USAGE_OUTCOME_WORDS } from '@/lib/wording/consignment';

type Row = WaitingLine & { day: string };

const COLUMNS: Column<Row>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  { id: 'lot', header: 'Lot', value: (row) => row.lot, width: 'fit' },
  {
    id: 'pieces',
    header: 'Pieces',
    align: 'end',
    value: (row) => (row.way === 'used' ? row.pieces : -row.pieces),
    cell: (row) => (row.way === 'used' ? row.pieces : `−${row.pieces}`),
    width: 'fit',
  },
  {
    id: 'outcome',
    header: 'Outcome',
    value: (row) => USAGE_OUTCOME_WORDS[row.outcome],
    cell: (row) =>
      row.way === 'used' ? (
        USAGE_OUTCOME_WORDS[row.outcome]
      ) : (
        <Status tone="attention" look="plain">
          {row.outcome === 'foundAgain'
            ? 'Found again'
            : `Taken back: ${USAGE_OUTCOME_WORDS[row.outcome].toLowerCase()}`}
        </Status>
      ),
    width: 'fit',
  },
  {
    id: 'case',
    header: 'Case',
    value: (row) => row.reference ?? '',
    cell: (row) => row.reference ?? 'no case',
    width: 'fit',
  },
  { id: 'on', header: 'On', value: (row) => row.doneOn, cell: (row) => row.day, width: 'fit' },
  { id: 'known', header: 'Known to be theirs', value: (row) => KNOWN_BY_WORDS[row.knownBy], width: 'fit' },
];

/** What the next usage order is made of. */
export function WaitingTable({ rows }: { rows: Row[] }) {
  return (
    <DataTable
      caption="What waits for a usage order"
      hideCaption
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => `${row.way} ${row.moveSeq}`}
      rowTone={(row) => (row.way === 'takenBack' ? 'attention' : null)}
      urlKey="waiting"
      sort="-on"
      empty="Nothing was used since the last usage order."
    />
  );
}

'use client';

import { ButtonRow } from '@/app/_ui/button-row';
import { type Column, DataTable } from '@/app/_ui/data-table';
import type { Choice } from '../day-table';
import { RemoveDialog } from './remove-dialog';
import { SessionDialog } from './session-dialog';

/** A session as its row shows it. */
export interface SessionLine {
  id: string;
  theatreId: string;
  theatre: string;
  date: string;
  day: string;
  /** `HH:MM` on the wall. */
  from: string;
  until: string;
  startsAt: string;
  times: string;
  surgeonId: string | null;
  surgeon: string;
  revision: number;
  over: boolean;
}

/** What a session is chosen from. */
export interface SessionChoices {
  theatres: Choice[];
  surgeons: Choice[];
}

interface SessionTableProps {
  rows: SessionLine[];
  choices: SessionChoices;
  mayChange: boolean;
}

type Row = SessionLine & { choices: SessionChoices };

// the same from one look to the next: a column that changes would close what is open in its cells
const COLUMNS: readonly Column<Row>[] = [
  { id: 'day', header: 'Day', value: ({ startsAt }) => startsAt, cell: ({ day }) => day },
  { id: 'theatre', header: 'Theatre', value: ({ theatre }) => theatre },
  { id: 'times', header: 'From and until', value: ({ from }) => from, cell: ({ times }) => times },
  { id: 'surgeon', header: 'Surgeon', value: ({ surgeon }) => surgeon },
  {
    id: 'acts',
    header: 'Change',
    sortable: false,
    value: () => '',
    cell: (row) => <ActsCell row={row} />,
    width: 'fit',
  },
];
const READ_ONLY = COLUMNS.filter(({ id }) => id !== 'acts');

function ActsCell({ row }: { row: Row }) {
  if (row.over) return 'over';
  return (
    <ButtonRow>
      <SessionDialog choices={row.choices} from={row.date} row={row} />
      <RemoveDialog row={row} />
    </ButtonRow>
  );
}

/** When the theatres work, by time, with what can be changed. */
export function SessionTable({ rows, choices, mayChange }: SessionTableProps) {
  return (
    <DataTable
      caption="Sessions"
      hideCaption
      columns={mayChange ? COLUMNS : READ_ONLY}
      rows={rows.map((row): Row => ({ ...row, choices }))}
      rowKey={({ id }) => id}
      urlKey="sessions"
      pageSize={60}
    />
  );
}

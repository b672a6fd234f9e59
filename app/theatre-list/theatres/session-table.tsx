'use client';

import { useMemo } from 'react';
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

/** When the theatres work, by time, with what can be changed. */
export function SessionTable({ rows, choices, mayChange }: SessionTableProps) {
  const columns = useMemo((): Column<SessionLine>[] => {
    const all: Column<SessionLine>[] = [
      { id: 'day', header: 'Day', value: ({ startsAt }) => startsAt, cell: ({ day }) => day },
      { id: 'theatre', header: 'Theatre', value: ({ theatre }) => theatre },
      { id: 'times', header: 'From and until', value: ({ from }) => from, cell: ({ times }) => times },
      { id: 'surgeon', header: 'Surgeon', value: ({ surgeon }) => surgeon },
    ];
    if (!mayChange) return all;
    const acts: Column<SessionLine> = {
      id: 'acts',
      header: 'Change',
      sortable: false,
      value: () => '',
      cell: (row) =>
        row.over ? (
          'over'
        ) : (
          <ButtonRow>
            <SessionDialog choices={choices} from={row.date} row={row} />
            <RemoveDialog row={row} />
          </ButtonRow>
        ),
      width: 'fit',
    };
    return [...all, acts];
  }, [choices, mayChange]);
  return (
    <DataTable
      caption="Sessions"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={({ id }) => id}
      urlKey="sessions"
      pageSize={60}
    />
  );
}

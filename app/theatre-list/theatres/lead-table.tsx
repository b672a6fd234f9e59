'use client';

import { useMemo } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { LeadDialog } from './lead-dialog';

/** A theatre's lead as its row shows it. */
export interface LeadRow {
  id: string;
  name: string;
  leadMinutes: number | null;
  revision: number;
  /** Why it was last changed, by whom and when; `null` where it never was. */
  why: string | null;
}

interface LeadTableProps {
  rows: LeadRow[];
  hospitalLead: number;
  mayChange: boolean;
}

/** How long before a case its sets must stand in each theatre. */
export function LeadTable({ rows, hospitalLead, mayChange }: LeadTableProps) {
  const columns = useMemo((): Column<LeadRow>[] => {
    const all: Column<LeadRow>[] = [
      { id: 'theatre', header: 'Theatre', value: ({ name }) => name },
      {
        id: 'lead',
        header: 'Before the case',
        value: ({ leadMinutes }) => leadMinutes ?? hospitalLead,
        cell: ({ leadMinutes }) =>
          leadMinutes === null ? `${hospitalLead} min, the hospital’s` : `${leadMinutes} min, its own`,
      },
      {
        id: 'why',
        header: 'Why',
        value: ({ why }) => why ?? '',
        cell: ({ why }) => why ?? 'never changed here',
        width: 'wide',
      },
    ];
    if (!mayChange) return all;
    const acts: Column<LeadRow> = {
      id: 'acts',
      header: 'Change',
      sortable: false,
      value: () => '',
      cell: (row) => <LeadDialog row={row} hospitalLead={hospitalLead} />,
      width: 'fit',
    };
    return [...all, acts];
  }, [hospitalLead, mayChange]);
  return (
    <DataTable
      caption="Lead by theatre"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={({ id }) => id}
      tools={false}
    />
  );
}

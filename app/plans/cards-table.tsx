'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { BuildToday } from '@/lib/plans/buildToday';
import { TodayStatus } from './_parts/today-status';
import styles from './plans.module.css';

export interface CardLine {
  id: string;
  surgeon: string;
  procedure: string;
  region: string;
  version: number;
  retired: boolean;
  used: number;
  extras: number;
  starts: { id: string; name: string }[];
}
type Line = CardLine & { today: ReadonlyMap<string, BuildToday> };

const columns: Column<Line>[] = [
  {
    id: 'procedure',
    header: 'Procedure',
    value: (line) => line.procedure,
    cell: (line) => (
      <>
        {line.procedure} {line.retired ? <Status tone="neutral">Retired</Status> : null}
      </>
    ),
    width: 'wide',
    hideable: false,
  },
  { id: 'surgeon', header: 'Surgeon', value: (line) => line.surgeon, width: 'name', hideable: false },
  { id: 'region', header: 'Region', value: (line) => line.region, width: 'phrase', hiddenAtFirst: true },
  {
    id: 'starts',
    header: 'Starts, and what is in store for each today',
    value: (line) => line.starts.map(({ name }) => name).join(', '),
    cell: (line) =>
      line.starts.length === 0 ? (
        <span>none named</span>
      ) : (
        <ul className={styles.starts}>
          {line.starts.map(({ id, name }) => (
            <li key={id}>
              <span>{name}</span> <TodayStatus today={line.today.get(id)} />
            </li>
          ))}
        </ul>
      ),
    width: 'wide',
  },
  { id: 'extras', header: 'Extras', value: (line) => line.extras, align: 'end', width: 'code' },
  { id: 'version', header: 'Version', value: (line) => line.version, align: 'end', width: 'code' },
  { id: 'used', header: 'Cases', value: (line) => line.used, align: 'end', width: 'code' },
];

/** Preference cards, by surgeon and procedure. */
export function CardsTable({
  lines,
  today,
}: {
  lines: readonly CardLine[];
  today: ReadonlyMap<string, BuildToday>;
}) {
  return (
    <DataTable
      caption="Preference cards"
      hideCaption
      aligned
      columns={columns}
      rows={lines.map((line) => ({ ...line, today }))}
      rowKey={(line) => line.id}
      rowHref={(line) => `/plans/cards/${line.id}`}
      urlKey="cards"
    />
  );
}

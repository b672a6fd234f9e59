'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { BuildToday } from '@/lib/plans/buildToday';
import { TodayStatus } from './_parts/today-status';

export interface StartLine {
  id: string;
  name: string;
  owner: string;
  region: string;
  plates: string;
  /** Something it names is no longer to be had. */
  gone: boolean;
  version: number;
  retired: boolean;
  used: number;
  /** `2 of 3`: changed, of those with a confirmed plan. */
  changed: string;
}
type Line = StartLine & { today: BuildToday | undefined };

const columns: Column<Line>[] = [
  {
    id: 'name',
    header: 'Start',
    value: (line) => line.name,
    cell: (line) => (
      <>
        {line.name} {line.retired ? <Status tone="neutral">Retired</Status> : null}
      </>
    ),
    width: 'wide',
    hideable: false,
  },
  { id: 'owner', header: 'Whose', value: (line) => line.owner, width: 'name' },
  { id: 'region', header: 'Region', value: (line) => line.region, width: 'phrase', hiddenAtFirst: true },
  {
    id: 'plates',
    header: 'Plates',
    value: (line) => line.plates,
    cell: (line) => (
      <>
        {line.plates} {line.gone ? <Status tone="stop">No longer to be had</Status> : null}
      </>
    ),
    width: 'wide',
  },
  {
    id: 'today',
    header: 'From what is in store today',
    value: (line) => line.today?.word ?? '',
    cell: (line) => <TodayStatus today={line.today} />,
    width: 'wide',
    hideable: false,
  },
  { id: 'version', header: 'Version', value: (line) => line.version, align: 'end', width: 'code' },
  { id: 'used', header: 'Cases', value: (line) => line.used, align: 'end', width: 'code' },
  { id: 'changed', header: 'Changed', value: (line) => line.changed, align: 'end', width: 'code' },
];

/** Saved starts, each with what the sets in store can build of it. */
export function StartsTable({
  lines,
  today,
}: {
  lines: readonly StartLine[];
  today: ReadonlyMap<string, BuildToday>;
}) {
  return (
    <DataTable
      caption="Saved starts"
      hideCaption
      aligned
      columns={columns}
      rows={lines.map((line) => ({ ...line, today: today.get(line.id) }))}
      rowKey={(line) => line.id}
      rowHref={(line) => `/plans/starts/${line.id}`}
      urlKey="starts"
    />
  );
}

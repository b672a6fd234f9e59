'use client';

import Link from 'next/link';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { writePence } from '@/lib/quantities/money';
import styles from '../_parts/parts.module.css';

interface LotRow {
  stockId: string;
  itemId: string;
  item: string;
  lot: string | null;
  place: string;
  useBy: string;
  units: number;
  pastUseBy: boolean;
  expectedLost: number;
  likelyLost: number;
  worthPence: number | null;
  said: string;
  workingHref: string;
}

const LOTS: Column<LotRow>[] = [
  {
    id: 'item',
    header: 'Item',
    value: (row) => row.item,
    cell: (row) => (
      <>
        <Link href={`/catalogue/${row.itemId}`}>{row.item}</Link>
        <p
          className={styles.soft}
        >{`${row.lot === null ? 'lot not known' : `lot ${row.lot}`}, ${row.place}`}</p>
      </>
    ),
    width: 'wide',
  },
  { id: 'said', header: 'What to do', value: (row) => row.said, width: 'wide' },
  {
    id: 'useBy',
    header: 'Use-by',
    value: (row) => row.useBy,
    cell: (row) => (row.pastUseBy ? <Status tone="stop">{`past ${row.useBy}`}</Status> : row.useBy),
    width: 'fit',
  },
  { id: 'units', header: 'Units', align: 'end', value: (row) => row.units, width: 'fit' },
  {
    id: 'lost',
    header: 'Expected to be lost',
    unit: 'units',
    align: 'end',
    value: (row) => row.expectedLost,
    cell: (row) => <Link href={row.workingHref}>{row.expectedLost.toFixed(1)}</Link>,
    width: 'fit',
  },
  {
    id: 'worth',
    header: 'Worth',
    align: 'end',
    value: (row) => row.worthPence,
    cell: (row) => (row.worthPence === null ? 'not known' : writePence(row.worthPence)),
    width: 'fit',
  },
];

/** Lots by what is likely to be lost of them; the expected loss leads to its working. */
export function LotTable({ rows }: { rows: LotRow[] }) {
  return (
    <DataTable
      caption="What to use or swap first"
      hideCaption
      columns={LOTS}
      rows={rows}
      rowKey={({ stockId }) => stockId}
      urlKey="lots"
      pageSize={25}
      empty="Nothing sterile of ours with a use-by lies on the shelves."
    />
  );
}

interface RepairTableRow {
  id: string;
  itemId: string;
  name: string;
  because: string;
  putAside: number;
  repaired: number;
  discarded: number;
  newPence: number | null;
}

const REPAIRS: Column<RepairTableRow>[] = [
  {
    id: 'item',
    header: 'Item',
    value: (row) => row.name,
    cell: (row) => <Link href={`/catalogue/${row.itemId}`}>{row.name}</Link>,
    width: 'wide',
  },
  { id: 'because', header: 'Because', value: (row) => row.because },
  { id: 'aside', header: 'Put aside', align: 'end', value: (row) => row.putAside },
  { id: 'repaired', header: 'Repaired', align: 'end', value: (row) => row.repaired },
  { id: 'discarded', header: 'Discarded', align: 'end', value: (row) => row.discarded },
  {
    id: 'new',
    header: 'A new one costs',
    align: 'end',
    value: (row) => row.newPence,
    cell: (row) => (row.newPence === null ? 'not known' : writePence(row.newPence)),
  },
];

/** What was put aside as unfit, by item and condition. */
export function RepairTable({ rows }: { rows: RepairTableRow[] }) {
  return (
    <DataTable
      caption="What was put aside as unfit"
      hideCaption
      columns={REPAIRS}
      rows={rows}
      rowKey={({ id }) => id}
      urlKey="repairs"
      pageSize={25}
      empty="Nothing was put aside in this time."
    />
  );
}

type LifeState = 'within' | 'replaceAfter' | 'mayBeDue' | 'replaceNow' | 'notEstablished';

interface LifeRow {
  id: string;
  setId: string;
  setCode: string;
  itemId: string;
  name: string;
  state: LifeState;
  stands: string;
  sentence: string;
  cycles: string | null;
  limit: number | null;
  booked: number;
  workingHref: string;
}

const TONES: Record<LifeState, Tone> = {
  within: 'good',
  replaceAfter: 'attention',
  mayBeDue: 'attention',
  replaceNow: 'stop',
  notEstablished: 'unknown',
};
const URGENCY: Record<LifeState, number> = {
  replaceNow: 0,
  replaceAfter: 1,
  mayBeDue: 2,
  notEstablished: 3,
  within: 4,
};

const LIFE: Column<LifeRow>[] = [
  {
    id: 'set',
    header: 'Set',
    value: (row) => row.setCode,
    cell: (row) => <Link href={`/sets/${row.setId}`}>{row.setCode}</Link>,
    width: 'fit',
  },
  {
    id: 'item',
    header: 'Item',
    value: (row) => row.name,
    cell: (row) => <Link href={`/catalogue/${row.itemId}`}>{row.name}</Link>,
    width: 'wide',
  },
  {
    id: 'stands',
    header: 'Stands',
    value: (row) => URGENCY[row.state],
    cell: (row) => (
      <>
        <Status tone={TONES[row.state]}>{row.stands}</Status>
        <p className={styles.soft}>{row.sentence}</p>
      </>
    ),
    width: 'wide',
  },
  {
    id: 'cycles',
    header: 'Cycles',
    align: 'end',
    value: (row) => row.cycles,
    cell: (row) => (
      <Link href={row.workingHref}>{`${row.cycles ?? 'not known'} of ${row.limit ?? 'not stated'}`}</Link>
    ),
  },
  { id: 'booked', header: 'Booked cases', align: 'end', value: (row) => row.booked },
];

/** Slots by how near the end of their life their pieces are; the cycles lead to the working. */
export function LifeTable({ rows }: { rows: LifeRow[] }) {
  return (
    <DataTable
      caption="How far limits are used up"
      hideCaption
      columns={LIFE}
      rows={rows}
      rowKey={({ id }) => id}
      urlKey="life"
      sort="stands"
      pageSize={25}
      empty="No piece in a set has a stated limit."
    />
  );
}

'use client';

import Link from 'next/link';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import styles from './review.module.css';

/** A line of the version in force with what past cases asked of it: figures, and words for them. */
export interface ReviewRow {
  id: string;
  place: string;
  itemId: string;
  name: string;
  mustHaveClass: number;
  kept: number;
  evidence: string;
  cases: number | null;
  uses: number | null;
  ratePercent: number | null;
  boundPercent: number | null;
  runsOutCases: number | null;
  runsOutBoundPercent: number | null;
  keepPence: number | null;
  fetchedPence: number | null;
  fetchedBoundPence: number | null;
  roomPence: number | null;
  roomBoundPence: number | null;
  enough: string | null;
  enoughSeen: number | null;
  verdict: string;
  tone: Tone;
  sentence: string;
  comparison: string | null;
  workingHref: string | null;
}

const pounds = (pence: number | null) => (pence === null ? null : (pence / 100).toFixed(2));
const range = (from: number | null, to: number | null) =>
  from === null ? null : to === null ? pounds(from) : `${pounds(from)}–${pounds(to)}`;

const columns: Column<ReviewRow>[] = [
  {
    id: 'line',
    header: 'Line',
    value: (row) => row.name,
    width: 'wide',
    cell: (row) => (
      <>
        <Link href={`/catalogue/${row.itemId}`}>{row.name}</Link>
        <p className={styles.soft}>{`layer, row, slot ${row.place}`}</p>
      </>
    ),
  },
  { id: 'class', header: 'Class', align: 'end', value: (row) => row.mustHaveClass, width: 'fit' },
  { id: 'kept', header: 'Kept', align: 'end', value: (row) => row.kept, width: 'fit' },
  {
    id: 'verdict',
    header: 'What the figures say',
    value: (row) => row.verdict,
    width: 'wide',
    cell: (row) => (
      <>
        <Status tone={row.tone}>{row.verdict}</Status>
        <p className={styles.soft}>{row.sentence}</p>
        {row.workingHref === null ? null : (
          <Link className={styles.small} href={row.workingHref}>
            the working
          </Link>
        )}
      </>
    ),
  },
  {
    id: 'uses',
    header: 'Used',
    value: (row) => row.ratePercent,
    cell: (row) =>
      row.uses === null ? (
        'not known'
      ) : (
        <span className={styles.words}>
          {`${row.uses} of ${row.cases}`}
          <p
            className={styles.soft}
          >{`${row.ratePercent?.toFixed(1)} %, at most ${row.boundPercent?.toFixed(1)} %`}</p>
        </span>
      ),
    width: 'phrase',
  },
  {
    id: 'out',
    header: 'Ran out in',
    value: (row) => row.runsOutCases,
    cell: (row) =>
      row.runsOutCases === null ? (
        'not known'
      ) : (
        <span className={styles.words}>
          {`${row.runsOutCases} cases`}
          <span className={styles.soft}>{`at most ${row.runsOutBoundPercent?.toFixed(1)} % of them`}</span>
        </span>
      ),
  },
  {
    id: 'enough',
    header: 'Would be enough',
    value: (row) => row.enoughSeen,
    cell: (row) => <span className={styles.words}>{row.enough ?? 'not known'}</span>,
  },
  {
    id: 'cost',
    header: '£ a case: kept, fetched, pouch in the room',
    value: (row) => row.fetchedPence,
    cell: (row) => (
      <ul className={styles.money}>
        <li>{`kept ${pounds(row.keepPence) ?? 'not known'}`}</li>
        <li>{`fetched ${range(row.fetchedPence, row.fetchedBoundPence) ?? 'not known'}`}</li>
        <li>{`in the room ${range(row.roomPence, row.roomBoundPence) ?? 'not known'}`}</li>
      </ul>
    ),
    width: 'phrase',
  },
  { id: 'evidence', header: 'Use is', value: (row) => row.evidence, hiddenAtFirst: true },
  {
    id: 'published',
    header: 'Beside what is published',
    value: (row) => row.comparison ?? 'not known',
    width: 'wide',
    hiddenAtFirst: true,
  },
];

/** Every line with its use, its risk and its cost; sorted by what the reader looks for. */
export function LineTable({ rows }: { rows: ReviewRow[] }) {
  return (
    <DataTable
      caption="Lines of the version in force and what past cases asked of them"
      hideCaption
      columns={columns}
      rows={rows}
      rowKey={(row) => row.id}
      urlKey="lines"
      pageSize={20}
    />
  );
}

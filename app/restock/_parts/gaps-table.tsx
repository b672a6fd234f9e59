'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Status } from '@/app/_ui/status';
import styles from '../restock.module.css';

interface Row {
  key: string;
  caseId: string;
  reference: string;
  startsAt: string;
  starts: string;
  what: string;
  /** `null`: an instrument, which only has to be there. */
  pieces: number | null;
  sentence: string;
  steps: string;
  coming: string;
  comesLate: boolean;
}

const COLUMNS: Column<Row>[] = [
  { id: 'case', header: 'Case', value: (row) => row.reference, width: 'code' },
  { id: 'starts', header: 'Begins', value: (row) => row.startsAt, cell: (row) => row.starts, width: 'fit' },
  { id: 'what', header: 'What lacks', value: (row) => row.what },
  {
    id: 'pieces',
    header: 'Pieces',
    align: 'end',
    value: (row) => row.pieces ?? 0,
    cell: (row) => row.pieces ?? 'instrument',
    width: 'fit',
  },
  { id: 'steps', header: 'Stops', value: (row) => row.steps },
  {
    id: 'why',
    header: 'Why',
    value: (row) => row.sentence,
    sortable: false,
    width: 'wide',
    cell: (row) => <div className={styles.why}>{row.sentence}</div>,
  },
  {
    id: 'coming',
    header: 'On order',
    value: (row) => row.coming,
    cell: (row) =>
      row.coming === '' ? (
        <Status tone="stop" look="plain">
          nothing on order
        </Status>
      ) : row.comesLate ? (
        <Status tone="attention" look="plain">{`${row.coming}: not known to be in time`}</Status>
      ) : (
        row.coming
      ),
  },
];

/** What booked cases need that the house does not have, the soonest case first. */
export function GapsTable({ cases, rows }: { cases: number; rows: Row[] }) {
  const short = new Set(rows.map(({ caseId }) => caseId)).size;
  return (
    <>
      <FigureRow>
        <Figure size="medium" label="Cases looked at" value={cases} note="booked, with a confirmed plan" />
        <Figure
          size="medium"
          label="Cases with a gap"
          value={short}
          status={
            short > 0 ? <Status tone="stop">something they need is not in the house</Status> : undefined
          }
        />
        <Figure
          size="medium"
          label="Gaps with nothing on order"
          value={rows.filter(({ coming }) => coming === '').length}
        />
      </FigureRow>
      <DataTable
        caption="Gaps"
        hideCaption
        columns={COLUMNS}
        rows={rows}
        rowKey={(row) => row.key}
        rowHref={(row) => `/cases/${row.caseId}`}
        urlKey="gaps"
        sort="starts"
        pageSize={50}
        empty="Every booked case with a confirmed plan finds what it needs in a set or on the shelf."
      />
    </>
  );
}

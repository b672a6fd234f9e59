'use client';

import { useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { Status } from '@/app/_ui/status';
import { TextArea } from '@/app/_ui/text-area';
import { ActForm } from '@/app/restock/_parts/act-form';
import { useRestockAct } from '@/app/restock/_parts/use-restock-act';
import type { ReconciledOnRecord } from '@/db/queries/consignment/reconciliations';
import { signed } from '@/lib/wording/reconciliation';

type Row = ReconciledOnRecord & { why: string };
interface Seen {
  id: string;
  number: string;
  revision: number;
}

const lotOf = ({ lot }: Row) => (lot === null ? 'no lot stated' : `lot ${lot}`);

const figure = (id: 'onShelf' | 'withCases' | 'inSlots', header: string): Column<Row> => ({
  id,
  header,
  align: 'end',
  value: (row) => row[id],
  width: 'fit',
});

const COLUMNS: Column<Row>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  { id: 'lot', header: 'Lot', value: (row) => row.lot, width: 'fit' },
  {
    id: 'listed',
    header: 'Owner says',
    align: 'end',
    value: (row) => row.listed ?? -1,
    cell: (row) => row.listed ?? 'not listed',
    width: 'fit',
  },
  figure('onShelf', 'On the shelf'),
  figure('withCases', 'With cases'),
  figure('inSlots', 'In slots'),
  {
    id: 'difference',
    header: 'Differs',
    align: 'end',
    value: (row) => row.difference,
    cell: (row) =>
      row.unexplained === 0 ? (
        signed(row.difference)
      ) : (
        <Status tone="attention" look="plain">
          {signed(row.difference)}
        </Status>
      ),
    width: 'fit',
  },
  {
    id: 'why',
    header: 'Why',
    value: (row) => row.why,
    cell: (row) => (row.why === '' ? 'the same' : row.why),
    width: 'wide',
    sortable: false,
  },
];

/** The lots side by side; of what nothing explains a person writes why it is there. */
export function ReconciledTable({
  reconciliation,
  rows,
  mayExplain,
}: {
  reconciliation: Seen;
  rows: Row[];
  mayExplain: boolean;
}) {
  const [open, setOpen] = useState<Row | null>(null);
  const columns = useMemo((): Column<Row>[] => {
    if (!mayExplain) return COLUMNS;
    const explain: Column<Row> = {
      id: 'explain',
      header: 'Reason',
      value: () => '',
      sortable: false,
      width: 'fit',
      cell: (row) =>
        row.unexplained === 0 ? (
          'none needed'
        ) : (
          <Button
            size="small"
            aria-label={`Write why ${row.code}, ${lotOf(row)}, differs`}
            onClick={() => setOpen(row)}
          >
            Write why
          </Button>
        ),
    };
    return [...COLUMNS, explain];
  }, [mayExplain]);
  return (
    <>
      <DataTable
        caption="Lots side by side"
        hideCaption
        columns={columns}
        rows={rows}
        rowKey={(row) => row.id}
        rowTone={(row) => (row.unexplained === 0 ? null : 'attention')}
        urlKey="reconciled"
        empty="Neither the list nor our record has anything."
      />
      {open === null ? null : (
        <Dialog
          title={`Why ${open.code}, ${lotOf(open)}, differs by ${signed(open.unexplained)}`}
          open
          onOpen={(isOpen) => !isOpen && setOpen(null)}
        >
          <ReasonForm reconciliation={reconciliation} row={open} onDone={() => setOpen(null)} />
        </Dialog>
      )}
    </>
  );
}

function ReasonForm({ reconciliation, row, onDone }: { reconciliation: Seen; row: Row; onDone: () => void }) {
  const { send, pending, problems } = useRestockAct();
  const [because, setBecause] = useState(row.because ?? '');
  const own = problems.map(({ path, sentence }) => ({ path: path.replace(/^act\./, ''), sentence }));
  async function write() {
    const done = await send(
      `/api/v1/consignment/reconciliations/${reconciliation.id}`,
      { baseRevision: reconciliation.revision, act: { kind: 'explain', lineId: row.id, because } },
      () => `The reason is kept with ${reconciliation.number}.`,
    );
    if (done) onDone();
  }
  return (
    <ActForm confirm="Keep the reason" pending={pending} problems={own} onSend={write}>
      <TextArea
        name="because"
        label="Why it is there"
        hint="in your words; it does not correct the shelf"
        rows={3}
        maxLength={300}
        value={because}
        onValue={setBecause}
        problems={problemsAt(own, 'because')}
      />
    </ActForm>
  );
}

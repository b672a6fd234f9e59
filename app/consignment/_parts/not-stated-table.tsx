'use client';

import { useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import { ActForm } from '@/app/restock/_parts/act-form';
import { useRestockAct } from '@/app/restock/_parts/use-restock-act';
import type { LotNotStated } from '@/db/queries/consignment/owners';

interface Owner {
  value: string;
  label: string;
}

const COLUMNS: Column<LotNotStated>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  { id: 'lot', header: 'Lot', value: (row) => row.lot, width: 'fit' },
  { id: 'shelf', header: 'On the shelf', align: 'end', value: (row) => row.onShelf, width: 'fit' },
  { id: 'maker', header: 'Maker', value: (row) => row.maker },
  {
    id: 'by',
    header: 'Delivered by',
    value: (row) => (row.deliveredBy.length === 0 ? null : row.deliveredBy.join(', ')),
  },
];

const keyOf = ({ itemId, lot }: LotNotStated) => `${itemId} ${lot ?? ''}`;

/** Consigned lots whose owner nobody has stated; whoever may states it here. */
export function NotStatedTable({ rows, owners }: { rows: LotNotStated[]; owners: Owner[] | null }) {
  const [open, setOpen] = useState<LotNotStated | null>(null);
  const columns = useMemo((): Column<LotNotStated>[] => {
    if (owners === null) return COLUMNS;
    const state: Column<LotNotStated> = {
      id: 'state',
      header: 'Owner',
      value: () => '',
      sortable: false,
      width: 'fit',
      cell: (row) => (
        <Button
          size="small"
          aria-label={`State the owner of ${row.code}, ${row.lot === null ? 'no lot stated' : `lot ${row.lot}`}`}
          onClick={() => setOpen(row)}
        >
          State the owner
        </Button>
      ),
    };
    const [code, name, lot, ...others] = COLUMNS;
    return [code, name, lot, state, ...others].filter((one) => one !== undefined);
  }, [owners]);
  return (
    <>
      <DataTable
        caption="Lots whose owner is not stated"
        hideCaption
        columns={columns}
        rows={rows}
        rowKey={keyOf}
        urlKey="not-stated"
        empty="Of everything on consignment the owner is stated."
      />
      {open !== null && owners !== null ? (
        <Dialog
          title={`Whose ${open.code} is, ${open.lot === null ? 'no lot stated' : `lot ${open.lot}`}`}
          open
          onOpen={(isOpen) => !isOpen && setOpen(null)}
        >
          <StateForm lot={open} owners={owners} onDone={() => setOpen(null)} />
        </Dialog>
      ) : null}
    </>
  );
}

function StateForm({ lot, owners, onDone }: { lot: LotNotStated; owners: Owner[]; onDone: () => void }) {
  const { send, pending, problems } = useRestockAct();
  const [lenderId, setLender] = useState('');
  const [because, setBecause] = useState('');
  async function state() {
    const done = await send(
      '/api/v1/consignment/owners',
      { itemId: lot.itemId, lot: lot.lot, before: null, lenderId, because },
      () => `${lot.code} is ${owners.find(({ value }) => value === lenderId)?.label ?? ''}’s.`,
    );
    if (done) onDone();
  }
  return (
    <ActForm confirm="State the owner" pending={pending} problems={problems} onSend={state}>
      <SelectField
        name="lenderId"
        label="Owner"
        hint="a firm on record; others are added under Lenders"
        blank="choose"
        options={owners}
        value={lenderId}
        onValue={setLender}
        problems={problemsAt(problems, 'lenderId')}
      />
      <TextArea
        name="because"
        label="How you know"
        hint="such as the delivery note or the owner’s list"
        rows={3}
        maxLength={300}
        value={because}
        onValue={setBecause}
        problems={problemsAt(problems, 'because')}
      />
    </ActForm>
  );
}

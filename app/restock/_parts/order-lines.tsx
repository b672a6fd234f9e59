'use client';

import { useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { NotStated } from '@/app/_ui/not-stated';
import type { OrderLine } from '@/db/queries/restock/orders';
import styles from '../restock.module.css';
import { ReceiveDialog } from './receive-dialog';

/** An order as it was seen. */
export interface SeenOrder {
  id: string;
  number: string;
  revision: number;
}

const COLUMNS: Column<OrderLine>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name },
  { id: 'ordered', header: 'Ordered', align: 'end', value: (row) => row.ordered, width: 'fit' },
  {
    id: 'packs',
    header: 'Packs',
    align: 'end',
    value: (row) => row.ordered / row.packOf,
    cell: (row) => (row.packOf === 1 ? row.ordered : `${row.ordered / row.packOf} × ${row.packOf}`),
    width: 'fit',
  },
  { id: 'here', header: 'Came', align: 'end', value: (row) => row.here, width: 'fit' },
  { id: 'toCome', header: 'To come', align: 'end', value: (row) => row.ordered - row.here, width: 'fit' },
  {
    id: 'price',
    header: 'Each',
    unit: '£',
    align: 'end',
    value: (row) => row.unitPence,
    cell: (row) => (row.unitPence === null ? <NotStated /> : (row.unitPence / 100).toFixed(2)),
    width: 'fit',
  },
  {
    id: 'why',
    header: 'Why',
    value: (row) => row.sentence,
    sortable: false,
    width: 'wide',
    cell: (row) => (
      <div className={styles.why}>
        {row.changedBecause === null
          ? row.sentence
          : `Changed: ${row.changedBecause}. Proposed was: ${row.sentence}`}
      </div>
    ),
  },
];

/** The lines of an order; whoever receives puts down what came of each. */
export function OrderLines({
  order,
  lines,
  receiving,
}: {
  order: SeenOrder;
  lines: OrderLine[];
  receiving: { places: { id: string; name: string }[]; year: number } | null;
}) {
  const [open, setOpen] = useState<OrderLine | null>(null);
  const mayReceive = receiving !== null;
  const columns = useMemo((): Column<OrderLine>[] => {
    if (!mayReceive) return COLUMNS;
    const receive: Column<OrderLine> = {
      id: 'receive',
      header: 'Receive',
      value: (row) => row.code,
      sortable: false,
      hideable: false,
      width: 'fit',
      cell: (row) =>
        row.ordered > row.here ? (
          <Button size="small" aria-label={`Receive ${row.code}`} onClick={() => setOpen(row)}>
            Receive
          </Button>
        ) : (
          'all came'
        ),
    };
    const [code, name, ...others] = COLUMNS;
    return [code, name, receive, ...others].filter((one) => one !== undefined);
  }, [mayReceive]);
  return (
    <>
      <DataTable
        caption="Lines of the order"
        hideCaption
        columns={columns}
        rows={lines}
        rowKey={(row) => row.id}
        rowHref={(row) => `/catalogue/${row.itemId}`}
        urlKey="lines"
        empty="There is no line."
      />
      {open !== null && receiving !== null ? (
        <ReceiveDialog order={order} line={open} {...receiving} onClose={() => setOpen(null)} />
      ) : null}
    </>
  );
}

'use client';

import { type Column, DataTable } from '@/app/_ui/data-table';
import type { WayTotals } from '@/lib/restock/totals';
import { percentWord } from '@/lib/wording/numbers';
import { poundsWords } from '@/lib/wording/restock-screens';

interface Row {
  id: string;
  what: string;
  reorder: string;
  par: string;
}

const COLUMNS: Column<Row>[] = [
  { id: 'what', header: 'Over the whole replay', value: (row) => row.what, sortable: false },
  { id: 'reorder', header: 'These settings', align: 'end', value: (row) => row.reorder, sortable: false },
  { id: 'par', header: 'Plain par level', align: 'end', value: (row) => row.par, sortable: false },
];

/** Service, stock and waste of both ways, beside one another. */
export function Compared({ reorder, par }: { reorder: WayTotals; par: WayTotals }) {
  const share = (value: number | null) => (value === null ? 'nothing was asked' : percentWord(value));
  const row = (id: string, what: string, said: (way: WayTotals) => string): Row => ({
    id,
    what,
    reorder: said(reorder),
    par: said(par),
  });
  return (
    <DataTable
      caption="Both ways"
      hideCaption
      columns={COLUMNS}
      rows={[
        row('pieces', 'Pieces asked for that were there', (way) => share(way.piecesServed)),
        row('cases', 'Cases that found all they asked for', (way) => share(way.casesServed)),
        row('times', 'Times between two orders in which nothing lacked', (way) => share(way.timesServed)),
        row('stock', 'Pieces on the shelf, on average', (way) => way.meanStock.toFixed(0)),
        row('value', 'What they cost', (way) => poundsWords(Math.round(way.meanStockPence))),
        row('waste', 'Pieces past their use-by', (way) =>
          way.pastUseBy === 0 ? 'none' : `${way.pastUseBy}, ${poundsWords(way.pastUseByPence)}`,
        ),
        row('orders', 'Lines ordered', (way) => String(way.orders)),
      ]}
      rowKey={(one) => one.id}
      urlKey="both"
      tools={false}
    />
  );
}

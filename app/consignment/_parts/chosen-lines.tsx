'use client';

import { useMemo, useState } from 'react';
import { type Column, DataTable } from '@/app/_ui/data-table';
import { Segmented } from '@/app/_ui/radio-group';
import { Status } from '@/app/_ui/status';
import { ActForm } from '@/app/restock/_parts/act-form';
import { useRestockAct } from '@/app/restock/_parts/use-restock-act';
import type { UsageOrderLineOnRecord } from '@/db/queries/consignment/usageOrders';
import { USAGE_OUTCOME_WORDS } from '@/lib/wording/consignment';

type Row = UsageOrderLineOnRecord & { day: string };
type Said = 'replace' | 'not';

const askedWords = ({ way, replace }: Row): string =>
  way === 'takenBack'
    ? 'takes back'
    : replace === null
      ? 'not said yet'
      : replace
        ? 'replace'
        : 'do not replace';

const COLUMNS: Column<Row>[] = [
  { id: 'code', header: 'Item', value: (row) => row.code, width: 'code' },
  { id: 'name', header: 'Name', value: (row) => row.name, width: 'wide' },
  {
    id: 'asked',
    header: 'Asked',
    value: askedWords,
    cell: (row) => (
      <Status tone={row.way === 'used' && row.replace === null ? 'unknown' : 'neutral'} look="plain">
        {askedWords(row)}
      </Status>
    ),
    width: 'fit',
  },
  { id: 'lot', header: 'Lot', value: (row) => row.lot, width: 'fit' },
  { id: 'useBy', header: 'Use-by', value: (row) => row.useBy, width: 'fit', hiddenAtFirst: true },
  {
    id: 'pieces',
    header: 'Pieces',
    align: 'end',
    value: (row) => (row.way === 'used' ? row.pieces : -row.pieces),
    cell: (row) => (row.way === 'used' ? row.pieces : `−${row.pieces}`),
    width: 'fit',
  },
  { id: 'outcome', header: 'Outcome', value: (row) => USAGE_OUTCOME_WORDS[row.outcome], width: 'fit' },
  {
    id: 'case',
    header: 'Case',
    value: (row) => row.reference ?? '',
    cell: (row) => row.reference ?? 'no case',
    width: 'fit',
  },
  { id: 'on', header: 'On', value: (row) => row.doneOn, cell: (row) => row.day, width: 'fit' },
];

/** The lines of a usage order; while it is not approved a person says of each whether it is to be replaced. */
export function ChosenLines({
  order,
  lines,
  choosing,
}: {
  order: { id: string; number: string; revision: number };
  lines: Row[];
  choosing: boolean;
}) {
  const { send, pending, problems } = useRestockAct();
  const [chosen, setChosen] = useState<Record<string, Said>>({});
  const columns = useMemo((): Column<Row>[] => {
    if (!choosing) return COLUMNS;
    const [code, name, asked, ...others] = COLUMNS;
    const choice: Column<Row> = {
      id: 'asked',
      header: 'Asked',
      value: askedWords,
      sortable: false,
      width: 'fit',
      cell: (row) =>
        row.way === 'takenBack' ? (
          'takes back'
        ) : (
          <Segmented<Said>
            name={`asked-${row.id}`}
            label={`${row.code}, ${row.lot ?? 'no lot stated'}, ${row.reference ?? row.day}`}
            hideLabel
            choices={[
              { value: 'replace', label: 'replace' },
              { value: 'not', label: 'do not replace' },
            ]}
            value={chosen[row.id] ?? (row.replace === null ? null : row.replace ? 'replace' : 'not')}
            onValue={(said) => setChosen((before) => ({ ...before, [row.id]: said }))}
          />
        ),
    };
    return [code, name, asked && choice, ...others].filter((one) => one !== undefined);
  }, [choosing, chosen]);
  const count = Object.keys(chosen).length;
  async function keep() {
    const done = await send(
      `/api/v1/consignment/orders/${order.id}`,
      {
        baseRevision: order.revision,
        act: {
          kind: 'choose',
          choices: Object.entries(chosen).map(([lineId, said]) => ({ lineId, replace: said === 'replace' })),
        },
      },
      () => `Kept with ${order.number}.`,
    );
    if (done) setChosen({});
  }
  return (
    <>
      <DataTable
        caption="Lines of the usage order"
        hideCaption
        columns={columns}
        rows={lines}
        rowKey={(row) => row.id}
        rowTone={(row) => (row.way === 'takenBack' ? 'attention' : null)}
        urlKey="lines"
        empty="There is no line."
      />
      {choosing && count > 0 ? (
        <ActForm
          confirm={`Keep what is said of ${count === 1 ? 'one line' : `${count} lines`}`}
          pending={pending}
          problems={problems}
          onSend={keep}
        />
      ) : null}
    </>
  );
}

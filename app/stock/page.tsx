import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { listStock } from '@/db/queries/stock';
import { SOON_DAYS, shelfLifeOf } from '@/lib/stock/shelfLife';
import { wallClock } from '@/lib/theatre/localTime';
import { FORM_WORDS, heldWords, OWNER_WORDS } from '@/lib/wording/stock';
import { StockTable } from './stock-table';

export const metadata: Metadata = { title: 'Stock' };
export const dynamic = 'force-dynamic';

export default async function StockPage() {
  const { db } = await enter('/stock');
  const today = wallClock(now()).date;
  const stock = await listStock(db);
  const rows = stock.map((row) => ({
    id: row.id,
    itemId: row.itemId,
    code: row.code,
    name: row.name,
    maker: row.maker,
    form: FORM_WORDS[row.form],
    quantity: row.quantity,
    lot: row.lot,
    useBy: row.useBy,
    state: shelfLifeOf(row.useBy, today),
    owner: OWNER_WORDS[row.owner],
    place: row.place,
    held: row.heldBecause === null ? null : heldWords(row.heldBecause),
    status: row.status,
  }));
  const count = (state: string) => rows.filter((row) => row.state === state && row.quantity > 0).length;
  const held = rows.filter((row) => row.held !== null).length;
  return (
    <Page
      title="Stock"
      lead="Pouches, sterile packs and loose pieces on the shelves, by lot, use-by and place. A kit takes the earliest use-by that is still good on the day of the case."
    >
      {rows.length === 0 ? (
        <EmptyState title="Nothing is on the shelves">
          Pouches and packs appear here once they are received.
        </EmptyState>
      ) : (
        <>
          <FigureRow>
            <Figure size="medium" label="Lots on the shelf" value={rows.length} />
            <Figure
              size="medium"
              label="Past use-by"
              value={count('past')}
              status={count('past') > 0 ? <Status tone="stop">taken into no kit</Status> : undefined}
            />
            <Figure size="medium" label={`Use-by within ${SOON_DAYS} days`} value={count('soon')} />
            <Figure size="medium" label="Held" value={held} />
          </FigureRow>
          <StockTable rows={rows} />
        </>
      )}
    </Page>
  );
}

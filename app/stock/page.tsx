import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { readSetting } from '@/db/queries/settings';
import { shelfLots } from '@/db/queries/shelf/shelfLots';
import { may } from '@/lib/people/permissions';
import { shelfLifeOf } from '@/lib/stock/shelfLife';
import { wallClock } from '@/lib/theatre/localTime';
import { itemRows, lotRows } from './stock-rows';
import { StockTables } from './stock-tables';

export const metadata: Metadata = { title: 'Stock' };
export const dynamic = 'force-dynamic';

/** The shelves: by item with the heap to take first, or heap by heap. */
export default async function StockPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db, person } = await enter('/stock');
  const at = now();
  const today = wallClock(at).date;
  const byLot = (await searchParams).view === 'lots';
  const [lots, { soonDays }] = await Promise.all([shelfLots(db, at), readSetting(db.read, 'stock')]);
  const lifeOf = lots.map(({ useBy }) => shelfLifeOf(useBy, today, soonDays));
  const standing = (state: string) => lifeOf.filter((one) => one === state).length;
  const held = lots.filter(({ heldBecause }) => heldBecause !== null).length;
  return (
    <Page
      title="Stock"
      lead="Pouches, sterile packs and loose pieces on the shelves. First expired, first out: a kit and a refill take the earliest use-by that is still good on the day of the case, and of the same use-by the nearest."
      actions={
        <ButtonRow>
          {may(person.role, 'receiveStock') ? (
            <LinkButton href="/stock/receive" kind="primary">
              Receive a delivery
            </LinkButton>
          ) : null}
          <LinkButton href="/stock/counts">Counts of the shelves</LinkButton>
        </ButtonRow>
      }
    >
      {lots.length === 0 ? (
        <EmptyState title="Nothing is on the shelves">
          Pouches and packs appear here once they are received.
        </EmptyState>
      ) : (
        <>
          <FigureRow>
            <Figure size="medium" label="Heaps on the shelves" value={lots.length} />
            <Figure
              size="medium"
              label="Past use-by"
              value={standing('past')}
              status={standing('past') > 0 ? <Status tone="stop">taken into no kit</Status> : undefined}
            />
            <Figure size="medium" label={`Use-by within ${soonDays} days`} value={standing('soon')} />
            <Figure size="medium" label="Held" value={held} />
          </FigureRow>
          <StockTables
            view={byLot ? 'lots' : 'items'}
            items={byLot ? [] : itemRows(lots, lifeOf)}
            lots={byLot ? lotRows(lots, lifeOf) : []}
          />
        </>
      )}
    </Page>
  );
}

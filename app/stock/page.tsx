import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { onlyTexts, servedQuery } from '@/app/_ui/served-rows';
import { Status } from '@/app/_ui/status';
import { may } from '@/lib/people/permissions';
import { loadShelves, stockPage } from './served-stock';
import { StockTables } from './stock-tables';
import { STOCK_NAMES } from './stock-values';

export const metadata: Metadata = { title: 'Stock' };
export const dynamic = 'force-dynamic';

/** The shelves: by item with the heap to take first, or heap by heap. */
export default async function StockPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { db, person } = await enter('/stock');
  const params = onlyTexts(await searchParams);
  const shelves = await loadShelves(db, now());
  const { items, soonDays } = shelves;
  const heaps = (of: 'heaps' | 'past' | 'soon' | 'held') =>
    items.reduce((sum, { item }) => sum + item[of], 0);
  return (
    <Page
      title="Stock"
      lead="Pouches, sterile packs and loose pieces on the shelves. First expired, first out: a kit and a refill take the earliest use-by that is still good on the day of the case, and of the same use-by the nearest."
      actions={
        <ButtonRow>
          {may(person, 'receiveStock') ? (
            <LinkButton href="/stock/receive" kind="primary">
              Receive a delivery
            </LinkButton>
          ) : null}
          <LinkButton href="/stock/counts">Counts of the shelves</LinkButton>
        </ButtonRow>
      }
    >
      {items.length === 0 ? (
        <EmptyState title="Nothing is on the shelves">
          Pouches and packs appear here once they are received.
        </EmptyState>
      ) : (
        <>
          <FigureRow>
            <Figure size="medium" label="Heaps on the shelves" value={heaps('heaps')} />
            <Figure
              size="medium"
              label="Past use-by"
              value={heaps('past')}
              status={heaps('past') > 0 ? <Status tone="stop">taken into no kit</Status> : undefined}
            />
            <Figure size="medium" label={`Use-by within ${soonDays} days`} value={heaps('soon')} />
            <Figure size="medium" label="Held" value={heaps('held')} />
          </FigureRow>
          <StockTables
            first={stockPage(shelves, params)}
            firstQuery={servedQuery(STOCK_NAMES, (name) => params.get(name))}
          />
        </>
      )}
    </Page>
  );
}

import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listPlaces } from '@/db/queries/places';
import { asidePiecesOf } from '@/db/queries/turns/asidePieces';
import { may } from '@/lib/people/permissions';
import { outcomesFor } from '@/lib/turns/aside';
import { AsideList } from './aside-list';
import { SettleDialog } from './settle-dialog';

export const metadata: Metadata = { title: 'Pieces put aside' };
export const dynamic = 'force-dynamic';

/** Unfit pieces taken out of sets: what waits to be settled, and what became of the last ones. */
export default async function RepairsPage() {
  const { db, person } = await enter('/repairs');
  const at = now();
  const [open, settled, places] = await Promise.all([
    asidePiecesOf(db, { settled: false, limit: 500 }),
    asidePiecesOf(db, { settled: true, limit: 50 }),
    listPlaces(db),
  ]);
  const shelves = places
    .filter(({ withdrawnAt }) => withdrawnAt === null)
    .map(({ id, name }) => ({ value: id, label: name }));
  const maySettle = may(person, 'settleAside');
  return (
    <Page
      bench
      title="Pieces put aside"
      lead="Unfit pieces taken out of sets. Worn ones go to repair, the rest is discarded; nothing is ever straightened."
    >
      <Section
        title="To be settled"
        note={open.length === 0 ? 'none' : `${open.length}, the longest waiting first`}
      >
        {open.length === 0 ? (
          <EmptyState title="Nothing is put aside">A piece found unfit at a count comes here.</EmptyState>
        ) : (
          <AsideList pieces={open} now={at}>
            {({ id, item, condition }) =>
              maySettle ? (
                <SettleDialog
                  asideId={id}
                  item={item.name}
                  outcomes={outcomesFor(condition, item)}
                  places={shelves}
                />
              ) : null
            }
          </AsideList>
        )}
      </Section>
      {settled.length > 0 ? (
        <Section title="Settled" note="the last 50, the latest first">
          <AsideList pieces={settled} now={at} />
        </Section>
      ) : null}
    </Page>
  );
}

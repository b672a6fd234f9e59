import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { listPlaces, whatLiesIn } from '@/db/queries/places';
import { may } from '@/lib/people/permissions';
import { stockForm } from '@/lib/stock/stock';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords, stepWords } from '@/lib/wording/sets';
import { FORM_WORDS, heldWords } from '@/lib/wording/stock';
import { PlaceForm } from '../place-form';
import { Arrivals } from './arrivals';
import styles from './place.module.css';

export const metadata: Metadata = { title: 'Place' };
export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

/** As many are shown here: all of a store are found in their own lists. */
const SHOWN = 100;

/** One place: what lies there, and putting things there by scanning them. */
export default async function PlacePage({ params }: Props) {
  const { db, person } = await enter('/places/[id]');
  const { id } = await params;
  const place = (await listPlaces(db)).find((one) => one.id === id);
  if (!place) notFound();
  const at = now();
  const lying = await whatLiesIn(db, place.id, SHOWN);
  const inUse = place.withdrawnAt === null;
  return (
    <Page
      bench
      title={place.name}
      mark={inUse ? undefined : <Status tone="neutral">out of use</Status>}
      lead={`${place.metres} m from the pick bench.`}
      breadcrumb={[{ label: 'Places', href: '/places' }]}
    >
      {inUse && may(person, 'moveSet') ? (
        <Section title="Put here by scanning" note="scan sets and pouches one after the other">
          <Arrivals place={{ id: place.id, name: place.name }} />
        </Section>
      ) : null}
      <Section title="Sets that lie here" note={lying.setsThere === 0 ? 'none' : String(lying.setsThere)}>
        {lying.sets.length === 0 ? (
          <EmptyState title="No set lies here">Sets put here show up as soon as they are scanned.</EmptyState>
        ) : (
          <>
            <ul className={styles.list} aria-label={`Sets in ${place.name}`}>
              {lying.sets.map((set) => (
                <li key={set.id}>
                  <Link href={`/sets/${set.id}`}>{set.code}</Link>
                  <span>{set.configuration}</span>
                  <span className={styles.soft}>
                    {`${capitalised(stepWords(set.step, set.heldBecause))} since ${momentWords(set.since, at)}`}
                  </span>
                </li>
              ))}
            </ul>
            {lying.setsThere > SHOWN ? (
              <p>
                <Link
                  href={`/sets?q=${encodeURIComponent(place.name)}`}
                >{`All ${lying.setsThere} sets`}</Link>
              </p>
            ) : null}
          </>
        )}
      </Section>
      {lying.stock.length === 0 ? null : (
        <Section title="Stock that lies here" note={`${lying.stockThere} lines`}>
          <ul className={styles.list} aria-label={`Stock in ${place.name}`}>
            {lying.stock.map((heap) => (
              <li key={heap.id}>
                <Link href={`/stock/${heap.itemId}`}>{heap.item}</Link>
                <span>{`${heap.quantity === null ? 'you count it now:' : `${heap.quantity} ×`} ${FORM_WORDS[stockForm.parse(heap.form)]}`}</span>
                <span className={styles.soft}>
                  {heap.lot === null ? 'lot not stated' : `lot ${heap.lot}`}
                  {heap.useBy === null ? '' : `, use-by ${heap.useBy}`}
                  {heap.pouches.length === 0 ? '' : `, ${heap.pouches.join(', ')}`}
                </span>
                {heap.heldBecause === null ? null : (
                  <Status tone="stop" look="plain">{`held, because ${heldWords(heap.heldBecause)}`}</Status>
                )}
              </li>
            ))}
          </ul>
          {lying.stockThere > SHOWN ? (
            <p>
              <Link href={`/stock?view=lots&q=${encodeURIComponent(place.name)}`}>
                {`All ${lying.stockThere} lines`}
              </Link>
            </p>
          ) : null}
        </Section>
      )}
      {may(person, 'managePlaces') ? (
        <Section title="Name and use">
          <PlaceForm
            key={place.revision}
            place={{ id: place.id, name: place.name, metres: place.metres, inUse, revision: place.revision }}
          />
        </Section>
      ) : null}
    </Page>
  );
}

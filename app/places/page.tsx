import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listPlaces } from '@/db/queries/places';
import { may } from '@/lib/people/permissions';
import { FollowPlaces } from './follow-places';
import { PlaceForm } from './place-form';
import { PlaceTable } from './place-table';

export const metadata: Metadata = { title: 'Places' };
export const dynamic = 'force-dynamic';

/** Where sets and pouches lie. */
export default async function PlacesPage() {
  const { db, person } = await enter('/places');
  const places = await listPlaces(db);
  return (
    <Page
      bench
      title="Places"
      lead="Where sets and pouches lie. Open a place, or scan its label, to put things there by scanning them."
    >
      <FollowPlaces />
      <PlaceTable places={places} />
      {may(person, 'managePlaces') ? (
        <Section title="Add a place">
          <PlaceForm place={null} />
        </Section>
      ) : null}
    </Page>
  );
}

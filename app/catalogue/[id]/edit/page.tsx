import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { database } from '@/app/_server/database';
import { actingPerson } from '@/app/_server/person';
import { Page } from '@/app/_ui/page';
import { findItem, listMakers } from '@/db/queries/catalogueItem';
import { draftFromItem } from '@/lib/catalogue/form/draft';
import { may } from '@/lib/people/permissions';
import { ItemForm } from '../../_form/item-form';
import { NotPermitted } from '../../_form/not-permitted';

type Params = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  const found = await findItem(database(), (await params).id);
  return { title: found ? `Edit ${found.item.code}` : 'No such item' };
}

export default async function EditItemPage({ params }: Params) {
  const found = await findItem(database(), (await params).id);
  if (!found) notFound();
  const { item, revision } = found;
  const person = await actingPerson();
  if (!may(person.role, 'editCatalogue'))
    return <NotPermitted title={`Edit ${item.code}`} person={person.name} />;
  return (
    <Page
      title={`Edit ${item.name}`}
      mark={item.code}
      breadcrumb={[
        { label: 'Catalogue', href: '/catalogue' },
        { label: item.code, href: `/catalogue/${item.id}` },
      ]}
    >
      <ItemForm
        kind={item.kind}
        id={item.id}
        revision={revision}
        first={draftFromItem(item)}
        makers={await listMakers(database())}
      />
    </Page>
  );
}

import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { findItem, listMakers } from '@/db/queries/catalogueItem';
import { draftFromItem } from '@/lib/catalogue/form/draft';
import { may } from '@/lib/people/permissions';
import { ItemForm } from '../../_form/item-form';
import { NotPermitted } from '../../_form/not-permitted';

type Params = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  const { db } = await enter('/catalogue/[id]/edit');
  const found = await findItem(db, (await params).id);
  return { title: found ? `Edit ${found.item.code}` : 'No such item' };
}

export default async function EditItemPage({ params }: Params) {
  const { db, person } = await enter('/catalogue/[id]/edit');
  const found = await findItem(db, (await params).id);
  if (!found) notFound();
  const { item, revision } = found;
  if (!may(person, 'editCatalogue')) return <NotPermitted title={`Edit ${item.code}`} person={person.name} />;
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
        makers={await listMakers(db)}
      />
    </Page>
  );
}

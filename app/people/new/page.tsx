import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { AddPersonForm } from './add-person-form';

export const metadata: Metadata = { title: 'Add a person' };

export default async function NewPersonPage() {
  await enter('/people/new');
  return (
    <Page
      title="Add a person"
      measure="reading"
      lead="They sign in by their name. Their first password is made up here, shown once, and changed as they first sign in."
      breadcrumb={[{ label: 'People', href: '/people' }]}
    >
      <AddPersonForm />
    </Page>
  );
}

import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { NewConfigurationForm } from './new-configuration-form';

export const metadata: Metadata = { title: 'New configuration' };

export default async function NewConfigurationPage() {
  await enter('/configurations/new');
  return (
    <Page
      title="New configuration"
      measure="reading"
      lead="It begins as a draft with nothing in it."
      breadcrumb={[{ label: 'Configurations', href: '/configurations' }]}
    >
      <NewConfigurationForm />
    </Page>
  );
}

import type { Metadata } from 'next';
import { Page } from '@/app/_ui/page';
import { NewConfigurationForm } from './new-configuration-form';

export const metadata: Metadata = { title: 'New configuration' };

export default function NewConfigurationPage() {
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

import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { listConfigurations } from '@/db/queries/configurations';
import { may } from '@/lib/people/permissions';
import { ConfigurationList } from './configuration-list';

export const metadata: Metadata = { title: 'Configurations' };
export const dynamic = 'force-dynamic';

export default async function ConfigurationsPage() {
  const { db, person } = await enter('/configurations');
  const rows = await listConfigurations(db);
  return (
    <Page
      title="Configurations"
      lead="What each kind of set should hold, and which constructs it is meant to allow. A version in force never changes; a change is a new version, put in force by a second person."
      actions={
        may(person, 'writeConfiguration') ? (
          <LinkButton href="/configurations/new" kind="primary">
            New configuration
          </LinkButton>
        ) : null
      }
    >
      <ConfigurationList rows={rows} />
    </Page>
  );
}

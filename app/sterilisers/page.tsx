import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { listSterilisers } from '@/db/queries/loads/loadBoard';
import { bandOf } from '@/lib/loads/programme';
import { may } from '@/lib/people/permissions';
import { momentWords } from '@/lib/wording/sets';
import { bandWords } from '@/lib/wording/thermal-dose';
import { SteriliserForm } from './steriliser-form';
import { WithdrawButton } from './withdraw-button';

export const metadata: Metadata = { title: 'Sterilisers' };
export const dynamic = 'force-dynamic';

export default async function SterilisersPage() {
  const { db, person } = await enter('/sterilisers');
  const sterilisers = await listSterilisers(db);
  const mayManage = may(person, 'manageSterilisers');
  const at = now();
  return (
    <Page
      bench
      title="Sterilisers"
      lead="What each can run: the band a programme holds, and for how long. A load keeps its programme as it stood when it was started."
      breadcrumb={[{ label: 'Loads', href: '/loads' }]}
      actions={mayManage ? <SteriliserForm steriliser={null} /> : undefined}
    >
      {sterilisers.length === 0 ? (
        <EmptyState title="No steriliser yet">
          {mayManage
            ? 'Add the first one with its programmes.'
            : 'The decontamination lead or an administrator adds them.'}
        </EmptyState>
      ) : null}
      {sterilisers.map((one) => (
        <Section
          key={one.id}
          title={one.name}
          note={
            one.withdrawnAt === null ? undefined : (
              <Status tone="attention">{`Out of service since ${momentWords(one.withdrawnAt, at)}`}</Status>
            )
          }
          actions={
            mayManage ? (
              <>
                {one.withdrawnAt === null ? <SteriliserForm steriliser={one} /> : null}
                <WithdrawButton steriliserId={one.id} name={one.name} out={one.withdrawnAt === null} />
              </>
            ) : null
          }
        >
          <DefinitionList
            items={one.programmes.map((programme) => ({
              term: programme.name,
              value: bandWords(bandOf(programme)),
            }))}
          />
        </Section>
      ))}
    </Page>
  );
}

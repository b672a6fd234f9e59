import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import { PeriodBar } from '@/app/reports/_parts/period-bar';
import { findConfiguration } from '@/db/queries/configurations';
import { may } from '@/lib/people/permissions';
import { askedMonths } from '@/lib/review/period';
import { ReviewBody } from './review-body';

export const dynamic = 'force-dynamic';

type Props = {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ months?: string | string[] }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/configurations/[id]/review');
  const configuration = await findConfiguration(db, (await params).id);
  return { title: configuration ? `Review of ${configuration.name}` : 'No such configuration' };
}

export default async function ReviewPage({ params, searchParams }: Props) {
  const { db, person } = await enter('/configurations/[id]/review');
  const configuration = await findConfiguration(db, (await params).id);
  if (!configuration) notFound();
  const months = askedMonths((await searchParams).months);
  return (
    <Page
      title={`Review of ${configuration.name}`}
      mark={configuration.code}
      lead="Which lines earn their place, how sure so many cases make us, and what another version would have meant. It proposes; people decide."
      breadcrumb={[
        { label: 'Configurations', href: '/configurations' },
        { label: configuration.name, href: `/configurations/${configuration.id}` },
      ]}
      actions={<LinkButton href="/settings/costs">What things cost</LinkButton>}
    >
      <PeriodBar action={`/configurations/${configuration.id}/review`} months={months} />
      <Suspense key={months} fallback={<Skeleton lines={12} label="The cases are gone through" />}>
        <ReviewBody
          access={db}
          configurationId={configuration.id}
          months={months}
          now={now()}
          mayWrite={may(person, 'writeConfiguration')}
        />
      </Suspense>
    </Page>
  );
}

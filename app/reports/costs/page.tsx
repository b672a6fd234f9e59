import type { Metadata } from 'next';
import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import { askedMonths } from '@/lib/review/period';
import { PeriodBar } from '../_parts/period-bar';
import { CostsBody } from './costs-body';

export const metadata: Metadata = { title: 'Cost and waste' };
export const dynamic = 'force-dynamic';

export default async function CostsPage({
  searchParams,
}: {
  searchParams: Promise<{ months?: string | string[] }>;
}) {
  const { db, person } = await enter('/reports/costs');
  const months = askedMonths((await searchParams).months);
  return (
    <Page
      title="Cost and waste"
      lead="What the things of past cases cost, and how much of it was opened for nothing. Staff and theatre time are not in it; no figure names a person."
      actions={<LinkButton href="/settings/costs">What things cost</LinkButton>}
    >
      <PeriodBar action="/reports/costs" months={months} />
      <Suspense key={months} fallback={<Skeleton lines={12} label="The cases are added up" />}>
        <CostsBody access={db} person={person} months={months} now={now()} />
      </Suspense>
    </Page>
  );
}

import type { Metadata } from 'next';
import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import { askedMonths } from '@/lib/review/period';
import { PeriodBar } from '../_parts/period-bar';
import { LossBody } from './loss-body';

export const metadata: Metadata = { title: 'Loss and life' };
export const dynamic = 'force-dynamic';

export default async function LossPage({
  searchParams,
}: {
  searchParams: Promise<{ months?: string | string[] }>;
}) {
  const { db } = await enter('/reports/loss');
  const months = askedMonths((await searchParams).months);
  return (
    <Page
      title="Loss and life"
      lead="What will pass its use-by on the shelf and should be used or swapped first, where pieces vanish and what is put aside, by step and never by person, and which pieces near the end of their life."
    >
      <PeriodBar action="/reports/loss" months={months} />
      <Suspense key={months} fallback={<Skeleton lines={12} label="The shelves are gone through" />}>
        <LossBody access={db} months={months} now={now()} />
      </Suspense>
    </Page>
  );
}

import type { Metadata } from 'next';
import { Suspense } from 'react';
import { z } from 'zod';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import { RiskBoard } from './risk-board';

export const metadata: Metadata = { title: 'Cases at risk' };
export const dynamic = 'force-dynamic';

const stretch = z.enum(['today', 'tomorrow', 'week']).catch('today');

/** Which cases cannot go as they stand, or may not, and what can be done about each: the worst first. */
export default async function AtRiskPage({ searchParams }: { searchParams: Promise<{ day?: string }> }) {
  const access = await enter('/theatre-list/at-risk');
  const day = stretch.parse((await searchParams).day ?? 'today');
  return (
    <Page
      title="Cases at risk"
      lead="Cases that cannot go as they stand, or may not, the worst first. What can be done about each is worked out as you ask for it; nothing is done until you say so."
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: 'Theatre list', href: '/theatre-list' },
      ]}
      actions={<LinkButton href="/theatre-list">Theatre list</LinkButton>}
    >
      <Suspense key={day} fallback={<Skeleton lines={8} label="Working out how the cases stand" />}>
        <RiskBoard access={access} day={day} />
      </Suspense>
    </Page>
  );
}

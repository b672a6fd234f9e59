import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { approach } from '@/app/_server/threshold';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { signInFacts } from '@/db/queries/signInFacts';
import { FirstRunForm } from './first-run-form';

export const metadata: Metadata = { title: 'First start' };
export const dynamic = 'force-dynamic';

/** Where a hospital without an administrator names its first, with the code the server printed. */
export default async function FirstRunPage() {
  const { db, session } = await approach('/first-run');
  if (session) redirect('/');
  const { hasAdministrator } = await signInFacts(db);
  if (hasAdministrator) {
    return (
      <Page title="First start" measure="reading">
        <EmptyState
          title="There is an administrator already"
          action={
            <LinkButton href="/sign-in" kind="primary">
              Sign in
            </LinkButton>
          }
        >
          This page names the first one only. An administrator adds everybody else.
        </EmptyState>
      </Page>
    );
  }
  return (
    <Page
      title="First start"
      measure="reading"
      lead="This hospital has no administrator yet. The first one is named here, with the code that the server printed when it started, and adds everybody else."
    >
      <FirstRunForm />
    </Page>
  );
}

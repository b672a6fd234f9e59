import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { hospitalName } from '@/app/_server/hospital';
import { presentWorkstation } from '@/app/_server/place';
import { approach } from '@/app/_server/threshold';
import { Page } from '@/app/_ui/page';
import { signInFacts } from '@/db/queries/signInFacts';
import { wayBack } from '@/lib/people/path';
import { DemoPeople } from './demo-people';
import { SignInForm } from './sign-in-form';

export const metadata: Metadata = { title: 'Sign in' };
export const dynamic = 'force-dynamic';

type Search = Promise<Record<string, string | string[] | undefined>>;

/** The way in: name and password, or at an enrolled workstation a badge and its PIN. */
export default async function SignInPage({ searchParams }: { searchParams: Search }) {
  const { db, session } = await approach('/sign-in');
  const { from, name } = await searchParams;
  if (session) redirect(wayBack(from));
  const [facts, workstation] = await Promise.all([signInFacts(db), presentWorkstation()]);
  if (!facts.hasAdministrator) redirect('/first-run');
  return (
    <Page
      title="Sign in"
      measure="reading"
      bench
      lead={
        workstation
          ? `${workstation.name}, ${hospitalName()}. Scan your badge, or give your name and password.`
          : `${hospitalName()}. What you do from here on is recorded under your name.`
      }
    >
      <SignInForm from={wayBack(from)} name={typeof name === 'string' ? name.slice(0, 200) : ''} />
      {facts.demo ? (
        <DemoPeople people={facts.demo} from={wayBack(from)} scans={workstation !== null} />
      ) : null}
    </Page>
  );
}

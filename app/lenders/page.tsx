import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { lendersOnFile } from '@/db/queries/loans/lenders';
import { may } from '@/lib/people/permissions';
import { LenderForm } from './lender-form';
import { LenderTable } from './lender-table';

export const metadata: Metadata = { title: 'Lenders' };
export const dynamic = 'force-dynamic';

/** Every firm that lends us sets, with how punctual it is and how much of it was processed for nothing. */
export default async function LendersPage() {
  const { db, person } = await enter('/lenders');
  const lenders = await lendersOnFile(db, now());
  return (
    <Page
      title="Lenders"
      lead="Firms that lend us sets, with how punctual each has been. A share is always beside the number it is of."
      breadcrumb={[{ label: 'Loans', href: '/loans' }]}
    >
      <LenderTable
        rows={lenders.map(({ id, name, contact, phone, inUse, loans, figures }) => ({
          id,
          name,
          contact,
          phone,
          inUse,
          loans: loans.length,
          ...figures.punctuality,
          processed: figures.unused.n,
          unused: figures.unused.unused,
        }))}
      />
      {may(person, 'keepLenders') ? (
        <Section title="Add a lender">
          <LenderForm lender={null} />
        </Section>
      ) : null}
    </Page>
  );
}

import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listProcedures } from '@/db/queries/cards/procedures';
import { may } from '@/lib/people/permissions';
import { REGION_WORDS } from '@/lib/wording/plans';
import styles from '../plans.module.css';
import { ProcedureForm } from './procedure-form';
import { ProcedureLine } from './procedure-line';

export const metadata: Metadata = { title: 'Procedures' };
export const dynamic = 'force-dynamic';

/** What the hospital calls its operations, for preference cards. */
export default async function ProceduresPage() {
  const { db, person } = await enter('/plans/procedures');
  const procedures = await listProcedures(db);
  const mayKeep = may(person, 'keepProcedures');
  return (
    <Page
      measure="reading"
      title="Procedures"
      lead="What this hospital calls its operations, each with its region. Preference cards are kept by surgeon and procedure."
      breadcrumb={[{ label: 'Starts and preference cards', href: '/plans' }]}
    >
      {procedures.length === 0 ? (
        <EmptyState title="No procedure yet">A theatre manager or administrator keeps the list.</EmptyState>
      ) : (
        <ul className={styles.extras} aria-label="Procedures">
          {procedures.map((one) => (
            <ProcedureLine
              key={`${one.id} ${one.revision}`}
              procedure={one}
              region={REGION_WORDS[one.region]}
              mayKeep={mayKeep}
            />
          ))}
        </ul>
      )}
      {mayKeep ? (
        <Section title="Add a procedure">
          <ProcedureForm procedure={null} />
        </Section>
      ) : null}
    </Page>
  );
}

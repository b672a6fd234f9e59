import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { presentWorkstation } from '@/app/_server/place';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { listWorkstations } from '@/db/queries/workstations';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import styles from '../people.module.css';
import { EnrolForm, WithdrawWorkstation } from './workstation-acts';

export const metadata: Metadata = { title: 'Workstations' };

/** The shared screens on which a badge and a PIN change the person. */
export default async function WorkstationsPage() {
  const { db } = await enter('/people/workstations');
  const [all, here] = await Promise.all([listWorkstations(db), presentWorkstation()]);
  return (
    <Page
      title="Workstations"
      measure="reading"
      lead="Shared screens at benches. On one, people change with badge and PIN; anywhere else a name and a password are needed."
      breadcrumb={[{ label: 'People', href: '/people' }]}
    >
      <Section title="This browser">
        {here ? (
          <p>
            <Status tone="good">Enrolled</Status> This browser is {here.name}.
          </p>
        ) : (
          <EnrolForm />
        )}
      </Section>
      <Section title="Enrolled" note={`${all.filter(({ withdrawnAt }) => withdrawnAt === null).length}`}>
        {all.length === 0 ? (
          <EmptyState title="No workstation yet">
            Sign in at the bench’s own browser and enrol it there: it is known by what that browser keeps.
          </EmptyState>
        ) : (
          <ul className={styles.sessions}>
            {all.map((one) => (
              <li key={one.id} className={styles.session}>
                <span>
                  <strong>{one.name}</strong>, by {one.enrolledBy} on{' '}
                  {dayWords(wallClock(one.enrolledAt).date)}
                </span>
                {one.withdrawnAt === null ? (
                  <WithdrawWorkstation id={one.id} name={one.name} />
                ) : (
                  <Status tone="neutral">Withdrawn</Status>
                )}
              </li>
            ))}
          </ul>
        )}
      </Section>
    </Page>
  );
}

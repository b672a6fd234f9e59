import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { itemNames, remarksSwitchedOff } from '@/db/queries/planner';
import { listPlanStarts } from '@/db/queries/plans';
import { may } from '@/lib/people/permissions';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { RemarkSwitches } from './remark-switches';
import { StartCard } from './start-card';

export const metadata: Metadata = { title: 'Saved starts' };
export const dynamic = 'force-dynamic';

export default async function PlansPage() {
  const { db, person } = await enter('/plans');
  const [starts, names, off] = await Promise.all([
    listPlanStarts(db, person.id),
    itemNames(db),
    remarksSwitchedOff(db),
  ]);
  return (
    <Page
      title="Saved starts"
      lead={`Constructs that ${person.name} keeps to begin plans from. A plan begun from one is a copy; the start stays as it is.`}
      breadcrumb={[{ label: 'Cases', href: '/cases' }]}
    >
      {starts.length === 0 ? (
        <EmptyState title="No saved starts" action={<LinkButton href="/cases">To the cases</LinkButton>}>
          {`${person.name} keeps none yet. In a plan, “Save as a start” keeps it here.`}
        </EmptyState>
      ) : null}
      {starts.map((start) => (
        <StartCard
          key={start.id}
          id={start.id}
          name={start.name}
          saved={dayWords(wallClock(start.savedAt).date)}
          construct={start.construct}
          gone={start.platesGone}
          names={Object.fromEntries(names)}
        />
      ))}
      <Section title="Plan remarks" note="a local setting">
        <RemarkSwitches off={off} maySet={may(person.role, 'setRemarks')} />
      </Section>
    </Page>
  );
}

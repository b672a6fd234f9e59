import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { bookingChoices } from '@/db/queries/cases';
import { listPlanStarts } from '@/db/queries/plans';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { BookingForm } from './booking-form';

export const metadata: Metadata = { title: 'Book a case' };
export const dynamic = 'force-dynamic';

export default async function NewCasePage({
  searchParams,
}: {
  searchParams: Promise<{ start?: string; date?: string }>;
}) {
  const { db, person } = await enter('/cases/new');
  const { start: asked, date: wanted } = await searchParams;
  const date = plainDate.safeParse(wanted);
  const [choices, starts] = await Promise.all([bookingChoices(db), listPlanStarts(db, person.id)]);
  const start = starts.find(({ id }) => id === asked) ?? null;
  return (
    <Page
      measure="reading"
      title="Book a case"
      lead="The case gets a reference of its own. Nothing about the patient is asked for, and nothing is to be written."
      breadcrumb={[{ label: 'Cases', href: '/cases' }]}
    >
      <BookingForm
        theatres={choices.theatres}
        surgeons={choices.surgeons}
        starts={starts.map(({ id, name, platesGone }) => ({
          id,
          name,
          gone: platesGone.map(({ name: plate, status }) => `${plate} is ${status}`),
        }))}
        asked={{
          startId: start?.id ?? '',
          startGone: asked !== undefined && start === null,
          region: start?.construct.region ?? '',
          surgeonId: person.role === 'surgeon' ? person.id : '',
          date: date.success ? date.data : addDays(wallClock(now()).date, 1),
        }}
      />
    </Page>
  );
}

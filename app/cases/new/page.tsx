import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { listCards } from '@/db/queries/cards/cards';
import { listStarts } from '@/db/queries/cards/starts';
import { bookingChoices } from '@/db/queries/cases';
import { platesGone } from '@/db/queries/plans';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { BookingForm } from './booking-form';

export const metadata: Metadata = { title: 'Book a case' };
export const dynamic = 'force-dynamic';

export default async function NewCasePage({
  searchParams,
}: {
  searchParams: Promise<{ start?: string; card?: string; date?: string }>;
}) {
  const { db, person } = await enter('/cases/new');
  const { start: asked, card: askedCard, date: wanted } = await searchParams;
  const date = plainDate.safeParse(wanted);
  const [choices, allStarts, allCards] = await Promise.all([
    bookingChoices(db),
    listStarts(db),
    listCards(db),
  ]);
  const starts = allStarts.filter(({ retiredAt }) => retiredAt === null);
  const cards = allCards.filter(({ retiredAt }) => retiredAt === null);
  const start = starts.find(({ id }) => id === asked) ?? null;
  const card = cards.find(({ id }) => id === askedCard) ?? null;
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
        starts={starts.map(({ id, name, owner, plates }) => ({
          id,
          name,
          own: owner.id === person.id || id === start?.id,
          gone: platesGone(plates).map(({ name: plate, status }) => `${plate} is ${status}`),
        }))}
        cards={cards.map(({ id, procedure, surgeon, body }) => ({
          id,
          name: procedure.name,
          surgeonId: surgeon.id,
          surgeon: surgeon.name,
          region: procedure.region,
          startIds: body.startIds,
          extras: body.extras.length,
        }))}
        asked={{
          startId: start?.id ?? '',
          cardId: card?.id ?? '',
          gone: (asked !== undefined && start === null) || (askedCard !== undefined && card === null),
          region: card?.procedure.region ?? start?.construct.region ?? '',
          surgeonId: card?.surgeon.id ?? (person.role === 'surgeon' ? person.id : ''),
          date: date.success ? date.data : addDays(wallClock(now()).date, 1),
        }}
      />
    </Page>
  );
}

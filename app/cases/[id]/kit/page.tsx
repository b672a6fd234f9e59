import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { enter } from '@/app/_server/enter';
import { highsSolver } from '@/app/_server/solver/highs';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { Status } from '@/app/_ui/status';
import { cardAsked } from '@/db/queries/cards/cardAsked';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { findCase } from '@/db/queries/cases';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { verdictWords } from '@/lib/wording/kit';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';
import { CardExtras } from './card-extras';
import { Certainty } from './certainty';
import { kitNames } from './kit-names';
import { LengthCover } from './length-cover';
import { Needs } from './needs';
import { OrderOfUse } from './order-of-use';
import { Shortages } from './shortages';
import { TakeList } from './take-list';
import { Verdict } from './verdict';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/cases/[id]/kit');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? `Kit, ${booked.reference}` : 'No such case' };
}

export default async function KitPage({ params }: Props) {
  const { db } = await enter('/cases/[id]/kit');
  const { id } = await params;
  const loaded = await loadKitOfCase(db, id, { solver: highsSolver, lengthCover: 'figure' });
  if (loaded.kind === 'noCase') notFound();
  const { booked } = loaded.kind === 'kit' ? loaded.answer : loaded;
  const breadcrumb = [
    { label: 'Cases', href: '/cases' },
    { label: booked.reference, href: `/cases/${booked.id}` },
  ];
  const lead = `${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toLowerCase()} · ${booked.theatre} · ${dayWords(booked.caseDate)}, ${wallClock(booked.startsAt).time} · ${booked.surgeon}`;
  if (loaded.kind === 'noPlan') {
    return (
      <Page title="Kit" breadcrumb={breadcrumb} lead={lead}>
        <EmptyState
          title="There is no plan to make a kit from"
          action={
            <LinkButton href={`/cases/${booked.id}/plan`} kind="primary">
              Plan this case
            </LinkButton>
          }
        >
          The kit follows from what the surgeon states: the plates, what goes in each hole, and the lengths.
        </EmptyState>
      </Page>
    );
  }
  const { kit, plan, newerDraft } = loaded.answer;
  const card = await cardAsked(db, loaded.answer);
  const names = kitNames(loaded.answer);
  const words = verdictWords(kit, names.item);
  return (
    <Page
      title="Kit"
      mark={<Status tone={words.tone}>{words.word}</Status>}
      breadcrumb={breadcrumb}
      lead={lead}
      actions={
        plan.status === 'confirmed' ? (
          <>
            <LinkButton href={`/cases/${booked.id}/pick-list`} kind="primary" newTab>
              Pick list
            </LinkButton>
            <LinkButton href={`/cases/${booked.id}/lay-up-card`} newTab>
              Lay-up card
            </LinkButton>
          </>
        ) : (
          <LinkButton href={`/cases/${booked.id}/plan`} kind="primary">
            Go on with the plan
          </LinkButton>
        )
      }
    >
      <Verdict kit={kit} words={words} plan={plan} newerDraft={newerDraft} caseId={booked.id} names={names} />
      <Shortages kit={kit} names={names} caseId={booked.id} />
      <Section title="Take these" note="from what is in store now">
        <TakeList kit={kit} names={names} />
      </Section>
      {card ? <CardExtras card={card} names={names} /> : null}
      <Section title="Lengths" note="how likely the screws on the table suffice" id="lengths">
        <Suspense fallback={<Skeleton lines={3} label="Working out the length cover" />}>
          <LengthCover caseId={booked.id} />
        </Suspense>
      </Section>
      <Section title="What the plan needs, and what meets it" id="needs">
        <Needs kit={kit} names={names} />
      </Section>
      <Section title="Order of use" id="order">
        <OrderOfUse kit={kit} names={names} />
      </Section>
      <Section title="How sure this is" id="sure">
        <Certainty kit={kit} names={names} caseId={booked.id} />
      </Section>
    </Page>
  );
}

import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { cache, Suspense } from 'react';
import { enter } from '@/app/_server/enter';
import { pageFirst } from '@/app/_server/page-first';
import { highsSolver } from '@/app/_server/solver/highs';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { Status } from '@/app/_ui/status';
import type { Database } from '@/db/client';
import { cardAsked } from '@/db/queries/cards/cardAsked';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { findCase, listPlanVersions } from '@/db/queries/cases';
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

/** One working out for the mark beside the title and for all below it. */
const kitOf = cache(async (db: Database, id: string) => {
  await pageFirst();
  return loadKitOfCase(db, id, { solver: highsSolver, lengthCover: 'figure' });
});

export default async function KitPage({ params }: Props) {
  const { db } = await enter('/cases/[id]/kit');
  const { id } = await params;
  const booked = await findCase(db, id);
  if (!booked) notFound();
  const versions = await listPlanVersions(db, id);
  const breadcrumb = [
    { label: 'Cases', href: '/cases' },
    { label: booked.reference, href: `/cases/${booked.id}` },
  ];
  const lead = `${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toLowerCase()} · ${booked.theatre} · ${dayWords(booked.caseDate)}, ${wallClock(booked.startsAt).time} · ${booked.surgeon}`;
  if (versions.length === 0) {
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
  return (
    <Page
      title="Kit"
      mark={
        <Suspense fallback={<span>working it out …</span>}>
          <KitMark db={db} caseId={booked.id} />
        </Suspense>
      }
      breadcrumb={breadcrumb}
      lead={lead}
      actions={
        versions.some(({ status }) => status === 'confirmed') ? (
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
      <Suspense fallback={<Skeleton lines={16} label="Working out the kit from what is in store" />}>
        <KitBody db={db} caseId={booked.id} />
      </Suspense>
    </Page>
  );
}

async function KitMark({ db, caseId }: { db: Database; caseId: string }) {
  const loaded = await kitOf(db, caseId);
  if (loaded.kind !== 'kit') return null;
  const words = verdictWords(loaded.answer.kit, kitNames(loaded.answer).item);
  return <Status tone={words.tone}>{words.word}</Status>;
}

async function KitBody({ db, caseId }: { db: Database; caseId: string }) {
  const loaded = await kitOf(db, caseId);
  if (loaded.kind !== 'kit') return null;
  const { kit, plan, newerDraft } = loaded.answer;
  const card = await cardAsked(db, loaded.answer);
  const names = kitNames(loaded.answer);
  const words = verdictWords(kit, names.item);
  return (
    <>
      <Verdict kit={kit} words={words} plan={plan} newerDraft={newerDraft} caseId={caseId} names={names} />
      <Shortages kit={kit} names={names} caseId={caseId} />
      <Section title="Take these" note="from what is in store now">
        <TakeList kit={kit} names={names} />
      </Section>
      {card ? <CardExtras card={card} names={names} /> : null}
      <Section title="Lengths" note="how likely the screws on the table suffice" id="lengths">
        <Suspense fallback={<Skeleton lines={3} label="Working out the length cover" />}>
          <LengthCover caseId={caseId} />
        </Suspense>
      </Section>
      <Section title="What the plan needs, and what meets it" id="needs">
        <Needs kit={kit} names={names} />
      </Section>
      <Section title="Order of use" id="order">
        <OrderOfUse kit={kit} names={names} />
      </Section>
      <Section title="How sure this is" id="sure">
        <Certainty kit={kit} names={names} caseId={caseId} />
      </Section>
    </>
  );
}

import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { checkScreen } from '@/db/queries/caseLife/checkScreen';
import { findCase } from '@/db/queries/cases';
import { may } from '@/lib/people/permissions';
import { pickWords, STAGE_TONES, STAGE_WORDS } from '@/lib/wording/case-life';
import { capitalised } from '@/lib/wording/numbers';
import { caseLead } from '../case-lead';
import { BeginCheck } from './begin-check';
import { CheckScreen } from './check-screen';
import { Differences } from './differences';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/cases/[id]/check');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? `Check the kit, ${booked.reference}` : 'No such case' };
}

export default async function CheckPage({ params }: Props) {
  const { db, person } = await enter('/cases/[id]/check');
  const { id } = await params;
  const booked = await findCase(db, id);
  const check = booked && (await checkScreen(db, booked.id));
  if (!booked || !check) notFound();
  const { stage, ownKit, open, last } = check;
  const refusal = !may(person, 'checkKit')
    ? pickWords.mayNot(person.name, 'check kits')
    : ownKit
      ? pickWords.checkYourOwn(person.name)
      : null;
  return (
    <Page
      bench
      title={`Check the kit of ${booked.reference}`}
      mark={<Status tone={STAGE_TONES[stage]}>{capitalised(STAGE_WORDS[stage])}</Status>}
      lead={caseLead(booked)}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: booked.reference, href: `/cases/${booked.id}` },
      ]}
    >
      {last ? <Differences last={last} caseId={booked.id} reference={booked.reference} /> : null}
      {open ? (
        <CheckScreen key={open.id} booked={{ id: booked.id, reference: booked.reference }} check={open} />
      ) : stage !== 'picked' ? (
        <EmptyState
          title="There is nothing to check now"
          action={<LinkButton href={`/cases/${booked.id}`}>{`Back to ${booked.reference}`}</LinkButton>}
        >
          {pickWords.notNow(booked.reference, stage)}
        </EmptyState>
      ) : refusal ? (
        <EmptyState
          title="Another person checks this kit"
          action={<LinkButton href={`/cases/${booked.id}`}>{`Back to ${booked.reference}`}</LinkButton>}
        >
          {refusal}
        </EmptyState>
      ) : (
        <BeginCheck booked={{ id: booked.id, reference: booked.reference }} again={last !== null} />
      )}
    </Page>
  );
}

import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { FollowOthers } from '@/app/_kit/follow-others';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { kitScreen } from '@/db/queries/caseLife/kitScreen';
import { findCase } from '@/db/queries/cases';
import { may } from '@/lib/people/permissions';
import { STAGE_TONES, STAGE_WORDS } from '@/lib/wording/case-life';
import { capitalised } from '@/lib/wording/numbers';
import { caseLead } from '../case-lead';
import { PickScreen } from './pick-screen';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/cases/[id]/pick');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? `Pick, ${booked.reference}` : 'No such case' };
}

export default async function PickPage({ params }: Props) {
  const { db, person } = await enter('/cases/[id]/pick');
  const { id } = await params;
  const at = now();
  const booked = await findCase(db, id);
  const kit = booked && (await kitScreen(db, booked.id, at));
  if (!booked || !kit) notFound();
  return (
    <Page
      bench
      title={`Pick ${booked.reference}`}
      mark={<Status tone={STAGE_TONES[kit.stage]}>{capitalised(STAGE_WORDS[kit.stage])}</Status>}
      lead={caseLead(booked)}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: booked.reference, href: `/cases/${booked.id}` },
      ]}
      actions={
        kit.confirmedVersion === null ? null : (
          <LinkButton href={`/cases/${booked.id}/pick-list`} newTab>
            Pick list on paper
          </LinkButton>
        )
      }
    >
      <FollowOthers />
      <PickScreen
        booked={{ id: booked.id, reference: booked.reference }}
        kit={kit}
        mayPick={may(person, 'pickKit')}
        mayIssue={may(person, 'issueKit')}
        now={at}
      />
    </Page>
  );
}

import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { FollowOthers } from '@/app/_kit/follow-others';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { backScreen } from '@/db/queries/caseLife/backScreen';
import { findCase } from '@/db/queries/cases';
import { may } from '@/lib/people/permissions';
import { STAGE_TONES, STAGE_WORDS } from '@/lib/wording/case-life';
import { capitalised } from '@/lib/wording/numbers';
import { caseLead } from '../case-lead';
import { BackScreen } from './back-screen';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/cases/[id]/back');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? `Back from theatre, ${booked.reference}` : 'No such case' };
}

export default async function BackPage({ params }: Props) {
  const { db, person } = await enter('/cases/[id]/back');
  const { id } = await params;
  const booked = await findCase(db, id);
  const back = booked && (await backScreen(db, booked.id));
  if (!booked || !back) notFound();
  return (
    <Page
      bench
      title={`Back from ${booked.reference}`}
      mark={<Status tone={STAGE_TONES[back.stage]}>{capitalised(STAGE_WORDS[back.stage])}</Status>}
      lead={caseLead(booked)}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: booked.reference, href: `/cases/${booked.id}` },
      ]}
    >
      <FollowOthers />
      {back.things.length === 0 ? (
        <EmptyState
          title="Nothing is out for this case"
          action={<LinkButton href={`/cases/${booked.id}`}>{`Back to ${booked.reference}`}</LinkButton>}
        >
          What is issued to theatre is shown here until it is accounted for.
        </EmptyState>
      ) : (
        <BackScreen
          booked={{ id: booked.id, reference: booked.reference }}
          things={back.things}
          mayReturn={may(person, 'returnKit')}
          mayJudge={may(person, 'judgeBarrier')}
          now={now()}
        />
      )}
    </Page>
  );
}

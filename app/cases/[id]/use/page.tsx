import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { FollowOthers } from '@/app/_kit/follow-others';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { findCase } from '@/db/queries/cases';
import { recordOfUse } from '@/db/queries/usage/recordOfUse';
import { may } from '@/lib/people/permissions';
import { momentWords } from '@/lib/wording/sets';
import { usageWords } from '@/lib/wording/usage';
import { caseLead } from '../case-lead';
import { DelaysAlone } from './delays';
import { UseMark } from './use-mark';
import { UseScreen } from './use-screen';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/cases/[id]/use');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? `What was used, ${booked.reference}` : 'No such case' };
}

export default async function UsePage({ params }: Props) {
  const { db, person } = await enter('/cases/[id]/use');
  const { id } = await params;
  const at = now();
  const booked = await findCase(db, id);
  const record = booked && (await recordOfUse(db, booked.id));
  if (!booked || !record) notFound();
  const there = record.sets.length > 0 || record.packs.length > 0;
  const mayRecord = may(person, 'recordUse');
  return (
    <Page
      bench
      title={`What was used in ${booked.reference}`}
      mark={
        <UseMark
          standing={{ entries: record.entries.length, open: record.closed?.questions.length ?? null }}
        />
      }
      lead={caseLead(booked)}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: booked.reference, href: `/cases/${booked.id}` },
      ]}
      actions={
        record.entries.length > 0 && record.hidden.length === 0 ? (
          <>
            <LinkButton href={`/cases/${booked.id}/use/paper`} newTab>
              Print
            </LinkButton>
            <LinkButton href={`/cases/${booked.id}/use/export?as=csv`} download>
              CSV
            </LinkButton>
            <LinkButton href={`/cases/${booked.id}/use/export?as=json`} download>
              JSON
            </LinkButton>
          </>
        ) : null
      }
    >
      <FollowOthers />
      {record.closed ? (
        <p>
          <Status tone="neutral">Closed</Status>
          {` by ${record.closed.by}, ${momentWords(record.closed.at, at)}. ${
            record.closed.questions.length === 0
              ? 'Every piece was accounted for.'
              : `Open as it was closed: ${record.closed.questions.length}.`
          }`}
        </p>
      ) : null}
      {record.hidden.length > 0 ? (
        <p>
          <Status tone="unknown">Not shown to you now</Status>
          {` ${usageWords.notWhole(record.hidden.map(({ code }) => code))} Nothing of it is shown here, and the record can’t be closed or given out by you meanwhile.`}
        </p>
      ) : null}
      {there ? (
        <>
          {mayRecord || record.closed ? null : (
            <p>A scrub practitioner enters what is used. What they have entered is shown here as it comes.</p>
          )}
          {record.plan === null ? (
            <p>
              <Status tone="unknown">No plan is confirmed</Status>
              {' There is nothing to hold it against: pieces are recorded from their sets and packs.'}
            </p>
          ) : null}
          <UseScreen
            booked={{ id: booked.id, reference: booked.reference }}
            record={record}
            mayRecord={mayRecord}
            mayCorrect={may(person, 'correctUse')}
            mayDelay={may(person, 'recordDelay')}
            now={at}
          />
        </>
      ) : (
        <>
          <EmptyState
            title="Nothing is in theatre for this case"
            action={<LinkButton href={`/cases/${booked.id}`}>{`Back to ${booked.reference}`}</LinkButton>}
          >
            The kit is issued first, or a set is sent to the case; then what is used of it is entered here.
          </EmptyState>
          <DelaysAlone
            caseId={booked.id}
            record={record}
            now={at}
            mayEnter={record.closed === null && may(person, 'recordDelay')}
          />
        </>
      )}
    </Page>
  );
}

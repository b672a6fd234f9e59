import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { findCase } from '@/db/queries/cases';
import { countsScreen } from '@/db/queries/theatreCounts/countsScreen';
import { may } from '@/lib/people/permissions';
import { openQuestionWords } from '@/lib/wording/theatre-counts';
import { caseLead } from '../case-lead';
import { BeginCounts } from './begin-counts';
import { ClosedCounts } from './closed-counts';
import { CountScreen } from './count-screen';
import { Questions } from './questions';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/cases/[id]/counts');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? `Counts in theatre, ${booked.reference}` : 'No such case' };
}

export default async function CountsPage({ params }: Props) {
  const { db, person } = await enter('/cases/[id]/counts');
  const { id } = await params;
  const at = now();
  const booked = await findCase(db, id);
  if (!booked) notFound();
  const { inTheatre, open, closed, questions } = await countsScreen(db, booked.id);
  const stillOpen = questions.filter(({ settled }) => settled === null).length;
  const mayCount = may(person, 'countInTheatre');
  return (
    <Page
      bench
      title={`Counts of ${booked.reference}`}
      mark={
        stillOpen > 0 ? (
          <Status tone="stop">{openQuestionWords(stillOpen)}</Status>
        ) : open ? (
          <Status tone="attention">Being counted</Status>
        ) : closed.length > 0 ? (
          <Status tone="good">Nothing open</Status>
        ) : (
          <Status tone="neutral">Not counted yet</Status>
        )
      }
      lead={caseLead(booked)}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: booked.reference, href: `/cases/${booked.id}` },
      ]}
    >
      {open && open.personId === person.id ? (
        <CountScreen key={open.id} booked={{ id: booked.id, reference: booked.reference }} count={open} />
      ) : open ? (
        <p>
          <Status tone="attention">Being counted</Status>
          {` by ${open.by}, who closes it with another person.`}
        </p>
      ) : inTheatre.length === 0 ? (
        <EmptyState
          title="Nothing is in theatre for this case"
          action={<LinkButton href={`/cases/${booked.id}`}>{`Back to ${booked.reference}`}</LinkButton>}
        >
          The kit is issued first, or a set is sent to the case; then it is counted by two people before and
          after.
        </EmptyState>
      ) : mayCount ? (
        <BeginCounts
          booked={{ id: booked.id, reference: booked.reference }}
          hasFirst={closed.some(({ moment }) => moment === 'first')}
          hasFinal={closed.some(({ moment }) => moment === 'final')}
        />
      ) : closed.length === 0 ? (
        <p>A scrub practitioner counts with another person, before and after.</p>
      ) : null}
      {questions.length > 0 ? (
        <Section
          title="What did not come out"
          note="a question stays open, wherever the set goes, until two people settle it"
        >
          <Questions
            questions={questions}
            mayWork={may(person, 'workOnQuestion')}
            maySettleAsNotFound={may(person, 'settleAsNotFound')}
            now={at}
          />
        </Section>
      ) : null}
      {closed.length > 0 ? <ClosedCounts closed={closed} now={at} /> : null}
    </Page>
  );
}

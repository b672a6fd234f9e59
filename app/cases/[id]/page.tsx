import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { UrgencyDialog } from '@/app/theatre-list/urgency-dialog';
import { originOfCase } from '@/db/queries/cards/cards';
import { findStart } from '@/db/queries/cards/starts';
import { findCase, listPlanVersions } from '@/db/queries/cases';
import { isEmergency } from '@/db/queries/emergency/record';
import { loansForCase } from '@/db/queries/loans/loanBoard';
import { listPeople } from '@/db/queries/people';
import { itemNames, platesOf } from '@/db/queries/planner';
import { shortForCase } from '@/db/queries/short/shortForCase';
import { may } from '@/lib/people/permissions';
import { dayWords } from '@/lib/theatre/localTime';
import { LIMB_WORDS, REGION_WORDS, URGENCY_WORDS } from '@/lib/wording/plans';
import { clockWords } from '@/lib/wording/theatre-list';
import styles from './case.module.css';
import { CaseLoans } from './case-loans';
import { ChangePlanButton } from './change-plan-button';
import { KitStrip } from './kit-strip';
import { PlanInWords } from './plan-in-words';
import { ShortBanner } from './short-banner';
import { UseReasons } from './use-reasons';
import { VersionList } from './version-list';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/cases/[id]');
  const booked = await findCase(db, (await params).id);
  return { title: booked ? booked.reference : 'No such case' };
}

export default async function CasePage({ params }: Props) {
  const { db, person } = await enter('/cases/[id]');
  const { id } = await params;
  const booked = await findCase(db, id);
  if (!booked) notFound();
  const at = now();
  const [versions, people, names, short, loans, origin, taken] = await Promise.all([
    listPlanVersions(db, id),
    listPeople(db),
    itemNames(db),
    shortForCase(db, id, at),
    loansForCase(db, id, at),
    originOfCase(db, id),
    isEmergency(db, booked.id),
  ]);
  const start = origin.start === null ? null : await findStart(db, origin.start.id);
  const confirmed = versions.find(({ status }) => status === 'confirmed');
  const draft = versions.find(({ status }) => status === 'draft');
  const shown = confirmed ?? draft;
  const itemName = (itemId: string) => names.get(itemId) ?? itemId;
  const personName = (personId: string) => people.find((one) => one.id === personId)?.name ?? personId;
  const mayWrite = may(person, 'writePlan');
  return (
    <Page
      title={booked.reference}
      mark={
        confirmed ? (
          <Status tone="good">{`Version ${confirmed.version} confirmed`}</Status>
        ) : draft ? (
          <Status tone="attention">{`Version ${draft.version} in draft`}</Status>
        ) : (
          <Status tone="unknown">No plan yet</Status>
        )
      }
      breadcrumb={[{ label: 'Cases', href: '/cases' }]}
      actions={
        <>
          {draft || !confirmed ? (
            <LinkButton href={`/cases/${booked.id}/plan`} kind="primary">
              {draft ? `Go on with version ${draft.version}` : 'Plan this case'}
            </LinkButton>
          ) : mayWrite ? (
            <ChangePlanButton caseId={booked.id} version={versions[0]?.version ?? 1} />
          ) : null}
          {taken ? (
            <LinkButton href={`/emergency/${booked.id}`}>Emergency</LinkButton>
          ) : booked.urgency === 'now' && booked.cancelled === null && booked.endsAt > at ? (
            <LinkButton href={`/emergency?case=${booked.id}`}>Find sets now</LinkButton>
          ) : null}
          {shown ? <LinkButton href={`/cases/${booked.id}/kit`}>Kit</LinkButton> : null}
          {confirmed ? (
            <LinkButton href={`/cases/${booked.id}/pick-list`} newTab>
              Pick list
            </LinkButton>
          ) : null}
          {confirmed ? (
            <LinkButton href={`/cases/${booked.id}/lay-up-card`} newTab>
              Lay-up card
            </LinkButton>
          ) : null}
        </>
      }
    >
      <ShortBanner sets={short} name={itemName} now={at} />
      <DefinitionList
        columns={2}
        items={[
          {
            term: 'Region and side',
            value: `${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toLowerCase()}`,
          },
          { term: 'Theatre', value: booked.theatre },
          {
            term: 'When',
            value: (
              <Link href={`/theatre-list?date=${booked.caseDate}`}>
                {`${dayWords(booked.caseDate)}, ${clockWords(booked.startsAt)} to ${clockWords(booked.endsAt)}`}
              </Link>
            ),
          },
          { term: 'Surgeon', value: booked.surgeon },
          {
            term: 'Urgency',
            value:
              booked.cancelled === null && booked.endsAt > at && may(person, 'keepTheatreList') ? (
                <span className={styles.urgency}>
                  {URGENCY_WORDS[booked.urgency]} <UrgencyDialog one={booked} />
                </span>
              ) : (
                URGENCY_WORDS[booked.urgency]
              ),
          },
          ...(origin.card
            ? [
                {
                  term: 'Preference card',
                  value: (
                    <Link href={`/plans/cards/${origin.card.id}`}>
                      {`${origin.card.procedure}, version ${origin.card.version}`}
                    </Link>
                  ),
                },
              ]
            : []),
          ...(start && origin.start
            ? [
                {
                  term: 'Plan begun from',
                  value: (
                    <Link href={`/plans/starts/${start.id}`}>
                      {`${start.name}, version ${origin.start.version}`}
                    </Link>
                  ),
                },
              ]
            : []),
        ]}
      />
      <KitStrip caseId={booked.id} over={booked.endsAt < at} now={at} />
      <UseReasons
        caseId={booked.id}
        recordHref={
          may(person, 'recordDelay') && booked.cancelled === null && booked.startsAt <= at
            ? `/cases/${booked.id}/use`
            : null
        }
      />
      {shown ? (
        <Section
          title={`The plan, version ${shown.version}`}
          note={shown.status === 'draft' ? 'in draft' : 'confirmed'}
        >
          <PlanInWords
            construct={shown.construct}
            itemName={itemName}
            plates={await platesOf(db, shown.construct)}
          />
        </Section>
      ) : (
        <EmptyState title="Nothing is planned for this case yet">
          A surgeon states the plates, what goes in each hole, and the lengths. The kit follows from it.
        </EmptyState>
      )}
      <CaseLoans
        loans={loans}
        askHref={may(person, 'askForLoan') && booked.startsAt > at ? `/loans/new?case=${booked.id}` : null}
        at={at}
      />
      {versions.length > 0 ? (
        <Section title="Versions" note="the newest first">
          <VersionList versions={versions} itemName={itemName} personName={personName} />
        </Section>
      ) : null}
    </Page>
  );
}

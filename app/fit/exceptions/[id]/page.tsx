import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { TrialSection } from '@/app/_changes/trial-section';
import { agreeWaits } from '@/app/_changes/waits';
import { Waits } from '@/app/_changes/waits-line';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { contentDigestOf, fitBasisDigest } from '@/db/queries/changes/fitDigests';
import { type TrialSubject, trialsOf } from '@/db/queries/changes/trials';
import { exceptionList, fitHistory } from '@/db/queries/fitScreens';
import { listPeople } from '@/db/queries/people';
import { stageOn } from '@/lib/fit/standing';
import { may } from '@/lib/people/permissions';
import { RELATION_WORDS, sourceWords } from '@/lib/wording/fit';
import { FitNav } from '../../_parts/fit-nav';
import { HistoryList } from '../../_parts/history-list';
import { LifeActions } from '../../_parts/life-actions';
import { StandingMark } from '../../_parts/rule-status';
import { today } from '../../_parts/today';
import styles from '../../fit.module.css';

export const metadata: Metadata = { title: 'Fit exception' };

/** One named exception: the pair, the answer, where it comes from, what it changes, and who decided. */
export default async function ExceptionPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/fit/exceptions/[id]');
  const { id } = await params;
  const day = today();
  const listed = (await exceptionList(db)).find(({ exception }) => exception.id === id);
  if (!listed) notFound();
  const { exception, first, second } = listed;
  const stage = stageOn(exception, day);
  const change = stage === 'draft' ? 'putInForce' : 'withdraw';
  const subject: TrialSubject = { kind: 'fit-exception', id, change };
  const [people, history, trials, basisDigest] = await Promise.all([
    listPeople(db),
    fitHistory(db, 'fit-exception', [id]),
    trialsOf(db, subject, contentDigestOf(exception)),
    fitBasisDigest(db.read, day),
  ]);
  const nameOf = (id: string | null) => people.find((one) => one.id === id)?.name ?? null;
  const named = (id: string | null) => nameOf(id) ?? 'Nobody yet';
  const by = stage === 'draft' ? exception.draftedBy : exception.withdrawalAskedBy;
  const mayAgree = may(person, 'approveFitRule');
  const waits = agreeWaits({ trials, me: person, mayAgree, first: by, basisDigest });
  return (
    <Page
      title={`${first.code} with ${second.code}`}
      mark={<StandingMark rule={exception} today={day} />}
      lead={exception.sentence}
      breadcrumb={[{ label: 'Fit', href: '/fit' }]}
      actions={
        <LifeActions
          kind="exception"
          id={id}
          stage={stage}
          today={day}
          waits={waits}
          trialId={trials.find((one) => one.by.id === person.id)?.id ?? null}
          draftNext={null}
        />
      }
    >
      <FitNav here={null} />
      <Section title="What it says">
        <DefinitionList
          items={[
            {
              term: 'Answer',
              value: (
                <Status tone={exception.answer === 'allow' ? 'good' : 'stop'}>
                  {exception.answer === 'allow' ? 'Allows: they fit' : 'Denies: they do not fit'}
                </Status>
              ),
            },
            { term: 'Relation', value: RELATION_WORDS[exception.relation].name },
            { term: 'First design', value: `${first.code} · ${first.name}` },
            { term: 'Second design', value: `${second.code} · ${second.name}` },
            { term: 'Source', value: sourceWords(exception.source) },
            { term: 'Drafted by', value: named(exception.draftedBy) },
            { term: 'Approved by', value: named(exception.approvedBy) },
            { term: 'In force from', value: exception.inForceFrom ?? 'Not yet' },
          ]}
        />
        <p>
          <Link href={`/fit/pair?a=${encodeURIComponent(first.code)}&b=${encodeURIComponent(second.code)}`}>
            Try this pair
          </Link>
        </p>
      </Section>
      {stage === 'over' ? null : (
        <TrialSection
          title={stage === 'draft' ? 'If this draft were in force' : 'If it were withdrawn'}
          subject={subject}
          trials={trials}
          me={person.id}
          drafter={by}
          basisDigest={basisDigest}
          mayTry={may(person, 'draftFitRule')}
        >
          {stage === 'draft' || stage === 'withdrawalAsked' ? (
            <Waits sentence={waits} by={nameOf(by)} />
          ) : null}
        </TrialSection>
      )}
      <Section title="History">
        <div className={styles.stack}>
          <HistoryList entries={history} />
        </div>
      </Section>
    </Page>
  );
}

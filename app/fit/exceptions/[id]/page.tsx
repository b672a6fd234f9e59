import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { loadCatalogue } from '@/db/queries/catalogue';
import { loadFitBasis } from '@/db/queries/fitRules';
import { exceptionList, fitHistory } from '@/db/queries/fitScreens';
import { listPeople } from '@/db/queries/people';
import { effectOf } from '@/lib/fit/change';
import { createFitEngine } from '@/lib/fit/engine';
import { overFamilies, screwFamiliesOf } from '@/lib/fit/exceptions';
import { standingOn } from '@/lib/fit/standing';
import { RELATION_WORDS, sourceWords } from '@/lib/wording/fit';
import { EffectView } from '../../_parts/effect-view';
import { FitNav } from '../../_parts/fit-nav';
import { HistoryList } from '../../_parts/history-list';
import { LifeActions } from '../../_parts/life-actions';
import { StandingMark } from '../../_parts/rule-status';
import { today } from '../../_parts/today';
import styles from '../../fit.module.css';

export const metadata: Metadata = { title: 'Fit exception' };

/** One named exception: the pair, the answer, where it comes from, what it changes, and who decided. */
export default async function ExceptionPage({ params }: { params: Promise<{ id: string }> }) {
  const { db } = await enter('/fit/exceptions/[id]');
  const { id } = await params;
  const day = today();
  const listed = (await exceptionList(db)).find(({ exception }) => exception.id === id);
  if (!listed) notFound();
  const { exception, first, second } = listed;
  const [basis, catalogue, people, history] = await Promise.all([
    loadFitBasis(db, day),
    loadCatalogue(db),
    listPeople(db),
    fitHistory(db, 'fit-exception', [id]),
  ]);
  const named = (person: string | null) => people.find((one) => one.id === person)?.name ?? 'Nobody yet';
  const standing = standingOn(exception, day);
  const others = basis.exceptions.filter((one) => one.id !== exception.id);
  const families = screwFamiliesOf(catalogue);
  const after = standing === 'draft' ? [...others, ...overFamilies(exception, families)] : others;
  const effect = effectOf(
    createFitEngine(basis),
    createFitEngine({ ...basis, exceptions: after }),
    catalogue.filter(({ status }) => status === 'current'),
    exception.relation,
  );
  const stage =
    standing === 'draft'
      ? 'draft'
      : standing !== 'inForce' || exception.inForceUntil !== null
        ? 'over'
        : exception.withdrawalAskedBy
          ? 'withdrawalAsked'
          : 'inForce';
  return (
    <Page
      title={`${first.code} with ${second.code}`}
      mark={<StandingMark rule={exception} today={day} />}
      lead={exception.sentence}
      breadcrumb={[{ label: 'Fit', href: '/fit' }]}
      actions={<LifeActions kind="exception" id={id} stage={stage} today={day} draftNext={null} />}
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
      {standing === 'draft' || standing === 'inForce' ? (
        <Section
          title={standing === 'draft' ? 'If this draft were in force' : 'If it were withdrawn'}
          look="sheet"
        >
          <EffectView effect={effect} />
        </Section>
      ) : null}
      <Section title="History">
        <div className={styles.stack}>
          <HistoryList entries={history} />
        </div>
      </Section>
    </Page>
  );
}

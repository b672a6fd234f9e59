import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SetQuestions } from '@/app/_kit/set-questions';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { loadOwnCount } from '@/db/queries/bench/ownCount';
import { benchStandingOf } from '@/db/queries/bench/standing';
import { keptCatalogue } from '@/db/queries/caseKit';
import { keptVersions } from '@/db/queries/keptVersions';
import { findSet } from '@/db/queries/sets';
import { openQuestionsOf } from '@/db/queries/theatreCounts/questions';
import { packBars, purposesOpen } from '@/lib/bench/packable';
import { may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { PURPOSE_WORDS, packBarSentence, standingSentences, benchWords as words } from '@/lib/wording/bench';
import { BenchScreen } from './bench-screen';
import { benchSubject } from './bench-subject';
import { StartPanel } from './start-panel';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/sets/[id]/count');
  const set = await findSet(db, (await params).id);
  return { title: set ? `Count ${set.code}` : 'No such set' };
}

export default async function CountPage({ params }: Props) {
  const { db, person } = await enter('/sets/[id]/count');
  const set = await findSet(db, (await params).id);
  if (!set) notFound();
  const [versions, catalogue, own, standing, questions] = await Promise.all([
    keptVersions(db),
    keptCatalogue(db),
    loadOwnCount(db, person.id, set.id),
    benchStandingOf(db.read, set.id),
    openQuestionsOf(db, [set.id]),
  ]);
  if (!standing) notFound();
  const layers = versions.get(set.version.id)?.layers ?? [];
  const refusal = !canBeCounted(set.step)
    ? words.sealed(set.code)
    : standing.turnId === null
      ? words.noTurn(set.code)
      : may(person, 'countSet')
        ? null
        : words.notPermitted(person.name, 'count a set');
  const disputed = new Set(standing.disputes.map(({ lineId }) => lineId));
  const subject = benchSubject(set, layers, catalogue, own?.purpose === 'settle' ? disputed : null);
  // whoever may still make the blind check learns nothing of what was found
  const mayStillCheck =
    standing.counted > 0 &&
    standing.checked < standing.lines &&
    !standing.countedBy.some(({ personId }) => personId === person.id);
  const bars = packBars(standing).filter(
    ({ kind }) => !mayStillCheck || (kind !== 'surplus' && kind !== 'foreign'),
  );
  const lineOf = new Map(subject.lines.map((line) => [line.id, line]));
  return (
    <Page
      bench
      title={`${own ? PURPOSE_WORDS[own.purpose].title : 'Count'} ${set.code}`}
      lead={set.configuration.name}
      breadcrumb={[
        { label: 'Sets', href: '/sets' },
        { label: set.code, href: `/sets/${set.id}` },
      ]}
    >
      <SetQuestions questions={questions} now={now()} />
      {refusal ? (
        <EmptyState
          title="This set can’t be counted now"
          action={<LinkButton href={`/sets/${set.id}`}>{`Back to ${set.code}`}</LinkButton>}
        >
          {refusal}
        </EmptyState>
      ) : set.lines.length === 0 ? (
        <EmptyState title="There is nothing to count">
          The version it follows has no lines.{' '}
          <Link href={`/configurations/${set.configuration.id}`}>See its configuration</Link>.
        </EmptyState>
      ) : own ? (
        <BenchScreen
          key={own.id}
          countId={own.id}
          purpose={own.purpose}
          subject={subject}
          recorded={own.entries}
          foreign={own.purpose === 'count' ? set.foreign : []}
          mayRefill={may(person, 'refillSet')}
        />
      ) : (
        <StartPanel
          setId={set.id}
          facts={standingSentences(standing)}
          bars={bars.map(packBarSentence)}
          disputed={standing.disputes.map((one) => ({
            ...one,
            name: lineOf.get(one.lineId)?.name ?? one.lineId,
            place: `layer ${lineOf.get(one.lineId)?.layer ?? ''}, ${lineOf.get(one.lineId)?.place ?? ''}`,
          }))}
          open={purposesOpen(standing, person.id)
            .filter(({ purpose }) => purpose !== 'check' || may(person, 'checkCount'))
            .map(({ purpose, lines }) => ({ purpose, note: `${lines} lines` }))}
        />
      )}
    </Page>
  );
}

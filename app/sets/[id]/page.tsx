import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SetQuestions } from '@/app/_kit/set-questions';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { FollowScans } from '@/app/_turns/follow-scans';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { keptVersions } from '@/db/queries/keptVersions';
import { loanOfSet } from '@/db/queries/loans/loanOfSet';
import { listPlaces } from '@/db/queries/places';
import { loadSetStanding } from '@/db/queries/setStandings';
import { findSet, lastCounts } from '@/db/queries/sets';
import { openQuestionsOf } from '@/db/queries/theatreCounts/questions';
import { asidePiecesOf } from '@/db/queries/turns/asidePieces';
import { casesToSendTo, loadSetTurn } from '@/db/queries/turns/setTurn';
import type { ItemId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { layoutOf } from '@/lib/sets/layout';
import { standingWord } from '@/lib/sets/standing';
import { capitalised, listWords } from '@/lib/wording/numbers';
import { momentWords, STANDING_TONES, STANDING_WORDS } from '@/lib/wording/sets';
import { AsideList } from '../../repairs/aside-list';
import { ClassKey } from '../_parts/class-mark';
import { Contents } from '../_parts/contents';
import { caseChoice } from './case-choice';
import { CompletenessSection } from './completeness-section';
import { CountHistory } from './count-history';
import { NowSection } from './now-section';
import { countedSince, mayOpen, offeredTo } from './offered';
import { OpenSetButton, RefitSetButton } from './set-actions';
import { SetSteps } from './set-steps';
import { ShortSection } from './short-section';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/sets/[id]');
  return { title: (await findSet(db, (await params).id))?.code ?? 'No such set' };
}

export default async function SetPage({ params }: Props) {
  const { db, person } = await enter('/sets/[id]');
  const { id } = await params;
  const at = now();
  const found = await loadSetStanding(db, id, at);
  if (!found) notFound();
  const { set, standing, items, newer } = found;
  const turn = await loadSetTurn(db, set.id);
  if (!turn) notFound();
  const [counts, versions, aside, cases, places, questions, loan] = await Promise.all([
    lastCounts(db, set.id, 5),
    keptVersions(db),
    asidePiecesOf(db, { settled: false, of: set.id, limit: 50 }),
    // all others are asked for by whoever opens the choice
    casesToSendTo(
      db,
      at,
      set.promisedTo.map(({ caseId }) => caseId),
    ),
    listPlaces(db),
    openQuestionsOf(db, [set.id]),
    set.owner === 'loan' ? loanOfSet(db, set.id) : null,
  ]);
  const version = versions.get(set.version.id);
  const name = (itemId: ItemId) => items.get(itemId)?.name ?? itemId;
  const word = standingWord(standing);
  const open = canBeCounted(set.step);
  const coming = set.promisedTo.find(({ caseId }) => cases.some(({ id: one }) => one === caseId));
  return (
    <Page
      bench
      title={set.code}
      mark={<Status tone={STANDING_TONES[word]}>{capitalised(STANDING_WORDS[word])}</Status>}
      lead={set.configuration.name}
      breadcrumb={[{ label: 'Sets', href: '/sets' }]}
      actions={
        <LinkButton href={`/sets/${set.id}/count-sheet`} newTab>
          Count sheet
        </LinkButton>
      }
    >
      <FollowScans />
      <SetQuestions questions={questions} now={at} />
      <NowSection set={set} turn={turn} now={at}>
        <SetSteps
          key={set.revision}
          set={{ id: set.id, code: set.code, revision: set.revision }}
          step={set.step}
          offered={offeredTo(person.role, set.step, turn, countedSince(counts, set.stepSince), set.id)}
          after={turn.after}
          cases={cases.map((one) => caseChoice(one, at))}
          promised={coming?.caseId ?? null}
          places={places
            .filter(({ withdrawnAt, id: one }) => withdrawnAt === null && one !== set.place?.id)
            .map(({ id: value, name: label }) => ({ value, label }))}
          promisedWords={
            set.promisedTo.length === 0
              ? ''
              : `It is promised to ${listWords(set.promisedTo.map(({ reference }) => reference))}; the promise stays.`
          }
        >
          {!open && mayOpen(set.step, turn) && may(person, 'openSet') ? (
            <OpenSetButton
              setId={set.id}
              code={set.code}
              revision={set.revision}
              promised={set.promisedTo.map(({ reference }) => reference)}
            />
          ) : null}
          {open && newer !== null && may(person, 'openSet') ? (
            <RefitSetButton
              setId={set.id}
              code={set.code}
              revision={set.revision}
              from={set.version.version}
              to={newer}
            />
          ) : null}
        </SetSteps>
      </NowSection>
      <Section title="The set" level={2}>
        <DefinitionList
          columns={2}
          items={[
            {
              term: 'Place',
              value: set.place ? <Link href={`/places/${set.place.id}`}>{set.place.name}</Link> : null,
            },
            {
              term: 'Ready in the sterile store',
              value:
                set.step === 'inSterileStore'
                  ? 'there now'
                  : set.readyAt === null
                    ? null
                    : momentWords(set.readyAt, at),
            },
            {
              term: 'Use-by',
              value: set.useBy ?? (set.step === 'inSterileStore' ? null : 'none while it is not packed'),
            },
            {
              term: 'Owner',
              value:
                loan !== null ? (
                  <Link href={`/loans/${loan.id}`}>{`On loan, ${loan.number}`}</Link>
                ) : set.owner === 'loan' ? (
                  'On loan'
                ) : (
                  'Ours'
                ),
              note: set.ownerNote,
            },
            {
              term: 'Configuration',
              value: (
                <Link href={`/configurations/${set.configuration.id}?version=${set.version.version}`}>
                  {`${set.configuration.code}, version ${set.version.version}`}
                </Link>
              ),
              note:
                newer === null
                  ? 'the version in force'
                  : `version ${newer} is in force: the set follows it when it is refitted${open ? '' : ', once open on the bench'}`,
            },
            {
              term: 'Promised to',
              value:
                set.promisedTo.length === 0
                  ? 'no case'
                  : set.promisedTo.map(({ caseId, reference, startsAt }) => (
                      <span key={caseId}>
                        <Link href={`/cases/${caseId}`}>{reference}</Link>
                        {`, ${momentWords(startsAt, at)} `}
                      </span>
                    )),
            },
          ]}
        />
      </Section>
      <CompletenessSection standing={standing} setId={set.id} name={name} />
      <ShortSection set={set} standing={standing} name={name} now={at} />
      <Section title="What lies in it" note={`as of version ${set.version.version}, last counted`}>
        <ClassKey />
        <Contents layers={layoutOf(version?.layers ?? [], set.lines, items)} items={items} />
      </Section>
      {aside.length > 0 ? (
        <Section
          title="Put aside from it"
          note="not settled yet"
          actions={<Link href="/repairs">All pieces put aside</Link>}
        >
          <AsideList pieces={aside} now={at} />
        </Section>
      ) : null}
      <Section title="Counts" note="the newest first">
        <CountHistory counts={counts} lines={set.lines} name={name} now={at} />
      </Section>
    </Page>
  );
}

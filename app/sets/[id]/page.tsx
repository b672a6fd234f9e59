import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { keptVersions } from '@/db/queries/keptVersions';
import { loadSetStanding } from '@/db/queries/setStandings';
import { findSet, lastCounts } from '@/db/queries/sets';
import type { ItemId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { layoutOf } from '@/lib/sets/layout';
import { standingWord } from '@/lib/sets/standing';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords, STANDING_TONES, STANDING_WORDS, stepWords } from '@/lib/wording/sets';
import { ClassKey } from '../_parts/class-mark';
import { Contents } from '../_parts/contents';
import { CompletenessSection } from './completeness-section';
import { CountHistory } from './count-history';
import { OpenSetButton, RefitSetButton } from './set-actions';
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
  const [counts, versions] = await Promise.all([lastCounts(db, set.id, 5), keptVersions(db)]);
  const version = versions.get(set.version.id);
  const name = (itemId: ItemId) => items.get(itemId)?.name ?? itemId;
  const word = standingWord(standing);
  const open = canBeCounted(set.step);
  return (
    <Page
      title={set.code}
      mark={<Status tone={STANDING_TONES[word]}>{capitalised(STANDING_WORDS[word])}</Status>}
      lead={set.configuration.name}
      breadcrumb={[{ label: 'Sets', href: '/sets' }]}
      actions={
        <>
          {open && may(person.role, 'countSet') ? (
            <LinkButton href={`/sets/${set.id}/count`} kind="primary">
              Count
            </LinkButton>
          ) : null}
          {!open && may(person.role, 'openSet') ? (
            <OpenSetButton
              setId={set.id}
              code={set.code}
              revision={set.revision}
              promised={set.promisedTo.map(({ reference }) => reference)}
            />
          ) : null}
          {open && newer !== null && may(person.role, 'openSet') ? (
            <RefitSetButton
              setId={set.id}
              code={set.code}
              revision={set.revision}
              from={set.version.version}
              to={newer}
            />
          ) : null}
          <LinkButton href={`/sets/${set.id}/count-sheet`} newTab>
            Count sheet
          </LinkButton>
        </>
      }
    >
      <DefinitionList
        columns={2}
        items={[
          {
            term: 'Where',
            value:
              set.step === 'held' ? (
                <Status tone="stop" look="plain">
                  {capitalised(stepWords(set.step, set.heldBecause))}
                </Status>
              ) : (
                capitalised(stepWords(set.step, set.heldBecause))
              ),
            note: `since ${momentWords(set.stepSince, at)}`,
          },
          { term: 'Place', value: set.place?.name ?? null },
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
          { term: 'Owner', value: set.owner === 'loan' ? 'On loan' : 'Ours', note: set.ownerNote },
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
      <CompletenessSection standing={standing} setId={set.id} name={name} />
      <ShortSection set={set} standing={standing} name={name} now={at} />
      <Section title="What lies in it" note={`as of version ${set.version.version}, last counted`}>
        <ClassKey />
        <Contents layers={layoutOf(version?.layers ?? [], set.lines, items)} items={items} />
      </Section>
      <Section title="Counts" note="the newest first">
        <CountHistory counts={counts} lines={set.lines} name={name} now={at} />
      </Section>
    </Page>
  );
}

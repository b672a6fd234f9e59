import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { buildsToday } from '@/app/_server/builds-today';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { cardVersions, findCard } from '@/db/queries/cards/cards';
import { listStarts } from '@/db/queries/cards/starts';
import { itemNames } from '@/db/queries/planner';
import { may } from '@/lib/people/permissions';
import { cardPaperWords } from '@/lib/wording/card-paper';
import { REGION_WORDS } from '@/lib/wording/plans';
import { CardChanges } from '../../_parts/card-changes';
import { savedWords } from '../../_parts/moment';
import { RetireButton } from '../../_parts/retire-button';
import { TodayView } from '../../_parts/start-views';
import styles from '../../plans.module.css';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/plans/cards/[id]');
  return { title: (await findCard(db, (await params).id))?.procedure.name ?? 'No such card' };
}

/** One preference card: what it asks for, what can be built of its starts today, and its versions. */
export default async function CardPage({ params }: Props) {
  const { db, person } = await enter('/plans/cards/[id]');
  const card = await findCard(db, (await params).id);
  if (!card) notFound();
  const [versions, all, names] = await Promise.all([
    cardVersions(db, card.id),
    listStarts(db),
    itemNames(db),
  ]);
  const { procedure, surgeon, body } = card;
  const starts = body.startIds.flatMap((id) => all.find((one) => one.id === id) ?? []);
  const builds = await buildsToday(db, starts);
  const changeNames = {
    item: (id: string) => names.get(id) ?? id,
    start: (id: string) => all.find((one) => one.id === id)?.name ?? id,
  };
  const own = surgeon.id === person.id && may(person, 'keepCards');
  const retired = card.retiredAt !== null;
  return (
    <Page
      title={procedure.name}
      mark={retired ? <Status tone="neutral">Retired</Status> : `Version ${card.version}`}
      lead={`The preference card of ${surgeon.name}. ${cardPaperWords.caution}`}
      breadcrumb={[{ label: 'Starts and preference cards', href: '/plans' }]}
      actions={
        <>
          {!retired && may(person, 'bookCase') ? (
            <LinkButton href={`/cases/new?card=${card.id}`} kind="primary">
              Book a case by it
            </LinkButton>
          ) : null}
          {own && !retired ? (
            <LinkButton href={`/plans/cards/${card.id}/edit`}>Change the card</LinkButton>
          ) : null}
          <LinkButton href={`/plans/cards/${card.id}/paper`} newTab>
            Print
          </LinkButton>
          {versions.length > 1 ? (
            <LinkButton href={`/plans/cards/${card.id}/compare`}>Compare versions</LinkButton>
          ) : null}
          {own || may(person, 'retireCards') ? (
            <RetireButton
              address={`/api/v1/plans/cards/${card.id}/retire`}
              name={procedure.name}
              what="card"
              retired={retired}
            />
          ) : null}
        </>
      }
    >
      <DefinitionList
        columns={2}
        items={[
          { term: 'Surgeon', value: surgeon.name },
          { term: 'Region', value: REGION_WORDS[procedure.region] },
          { term: 'Cases booked by it', value: String(card.used) },
          { term: 'Last saved', value: savedWords(card.savedAt) },
        ]}
      />
      {body.note === null ? null : (
        <Section title="Note">
          <p>{body.note}</p>
        </Section>
      )}
      <Section title={cardPaperWords.starts} note={cardPaperWords.startsNote}>
        {starts.length === 0 ? <p>{cardPaperWords.noStarts}</p> : null}
        {starts.map((start, at) => {
          const today = builds[at];
          return (
            <Section
              key={start.id}
              level={3}
              title={<Link href={`/plans/starts/${start.id}`}>{start.name}</Link>}
              note={start.retiredAt === null ? `version ${start.version}` : 'retired'}
            >
              {today ? <TodayView today={today} /> : null}
            </Section>
          );
        })}
      </Section>
      <Section title={cardPaperWords.extras} note={`${body.extras.length}`}>
        {body.extras.length === 0 ? (
          <p>{cardPaperWords.noExtras}</p>
        ) : (
          <ul className={styles.plain}>
            {body.extras.map(({ itemId, quantity, note }) => (
              <li key={itemId}>
                {`${quantity} × `}
                <Link href={`/catalogue/${itemId}`}>{changeNames.item(itemId)}</Link>
                {note === null ? '' : `: ${note}`}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section title="Versions" note={`${versions.length}, the newest first`}>
        <ol className={styles.versions} reversed>
          {versions.map((version, at) => {
            const before = versions[at + 1];
            return (
              <li key={version.version}>
                <p>
                  <strong>{`Version ${version.version}`}</strong>{' '}
                  <span
                    className={styles.soft}
                  >{`saved by ${version.savedBy}, ${savedWords(version.savedAt)}`}</span>
                </p>
                {before ? <CardChanges before={before} after={version} names={changeNames} /> : null}
              </li>
            );
          })}
        </ol>
      </Section>
    </Page>
  );
}

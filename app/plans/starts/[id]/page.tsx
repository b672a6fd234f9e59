import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { buildsToday } from '@/app/_server/builds-today';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { PlanInWords } from '@/app/cases/[id]/plan-in-words';
import { ChangesList } from '@/app/cases/changes-list';
import { listCards } from '@/db/queries/cards/cards';
import { findStart, startFigures, startVersions } from '@/db/queries/cards/starts';
import { itemNames, platesOf } from '@/db/queries/planner';
import { platesGone } from '@/db/queries/plans';
import { may } from '@/lib/people/permissions';
import { compareConstructs } from '@/lib/plans/compare';
import { startUseFigures } from '@/lib/plans/startUse';
import { savedWords } from '../../_parts/moment';
import { RetireButton } from '../../_parts/retire-button';
import { TodayView, UseView } from '../../_parts/start-views';
import styles from '../../plans.module.css';
import { RenameButton } from './rename-button';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/plans/starts/[id]');
  return { title: (await findStart(db, (await params).id))?.name ?? 'No such start' };
}

/** One saved start: what it states, what can be built of it today, how it fared, and its versions. */
export default async function StartPage({ params }: Props) {
  const { db, person } = await enter('/plans/starts/[id]');
  const start = await findStart(db, (await params).id);
  if (!start) notFound();
  const [[today], versions, figures, names, plates, cards] = await Promise.all([
    buildsToday(db, [start]),
    startVersions(db, start.id),
    startFigures(db, start.id),
    itemNames(db),
    platesOf(db, start.construct),
    listCards(db),
  ]);
  const itemName = (id: string) => names.get(id) ?? id;
  const own = start.owner.id === person.id && may(person, 'writePlan');
  const retired = start.retiredAt !== null;
  const named = cards.filter(({ body, retiredAt }) => retiredAt === null && body.startIds.includes(start.id));
  return (
    <Page
      title={start.name}
      mark={retired ? <Status tone="neutral">Retired</Status> : `Version ${start.version}`}
      lead={`A saved start of ${start.owner.name}. A plan begun from it is a copy; the start stays as it is.`}
      breadcrumb={[{ label: 'Starts and preference cards', href: '/plans' }]}
      actions={
        <>
          {!retired && may(person, 'bookCase') ? (
            <LinkButton href={`/cases/new?start=${start.id}`} kind="primary">
              Book a case from it
            </LinkButton>
          ) : null}
          {own ? <RenameButton id={start.id} name={start.name} /> : null}
          {versions.length > 1 ? (
            <LinkButton href={`/plans/starts/${start.id}/compare`}>Compare versions</LinkButton>
          ) : null}
          {own || may(person, 'retireCards') ? (
            <RetireButton
              address={`/api/v1/plans/starts/${start.id}/retire`}
              name={start.name}
              what="start"
              retired={retired}
            />
          ) : null}
        </>
      }
    >
      {platesGone(start.plates).map(({ name, status }) => (
        <p key={name}>
          <Status tone="stop">Stop</Status>{' '}
          {status === 'unknown'
            ? `The catalogue no longer has the plate ${name}: a plan from this start needs another.`
            : `${name} is ${status}: a plan from this start needs another plate.`}
        </p>
      ))}
      <Section title="From what is in store today">{today ? <TodayView today={today} /> : null}</Section>
      <Section title="What it states">
        <PlanInWords construct={start.construct} itemName={itemName} plates={plates} />
      </Section>
      <Section title="In cases" note="counts, with what they are out of">
        <UseView figures={figures.get(start.id) ?? startUseFigures([])} />
        {named.length > 0 ? (
          <p>
            Named by the preference {named.length === 1 ? 'card' : 'cards'}{' '}
            {named.map((card, at) => (
              <span key={card.id}>
                {at > 0 ? ', ' : ''}
                <Link href={`/plans/cards/${card.id}`}>{card.procedure.name}</Link>
              </span>
            ))}
            .
          </p>
        ) : null}
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
                {before ? (
                  <ChangesList
                    caption={`Changes from version ${before.version} to version ${version.version}`}
                    changes={compareConstructs(before.construct, version.construct)}
                    itemName={itemName}
                    heads={[`Version ${before.version}`, `Version ${version.version}`]}
                  />
                ) : null}
              </li>
            );
          })}
        </ol>
        {own && !retired ? (
          <p className={styles.soft}>
            A next version is saved from a plan: begin a plan from this start, change it, and choose “Save as
            a start”.
          </p>
        ) : null}
      </Section>
    </Page>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { ClassKey } from '@/app/sets/_parts/class-mark';
import { loadWholeStanding } from '@/db/queries/configurationStanding';
import { findConfiguration } from '@/db/queries/configurations';
import { may } from '@/lib/people/permissions';
import { writeGrams } from '@/lib/quantities/mass';
import { layoutOf } from '@/lib/sets/layout';
import styles from '../_parts/configurations.module.css';
import { VersionContents } from '../_parts/version-contents';
import { VERSION_TONES, versionWords } from '../_parts/version-words';
import { ApprovalBack } from './approval-back';
import { BeginDraftButton } from './begin-draft-button';
import { UseSection } from './use-section';
import { VersionList } from './version-list';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ version?: string | string[] }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/configurations/[id]');
  return { title: (await findConfiguration(db, (await params).id))?.name ?? 'No such configuration' };
}

export default async function ConfigurationPage({ params, searchParams }: Props) {
  const { db, person } = await enter('/configurations/[id]');
  const configuration = await findConfiguration(db, (await params).id);
  if (!configuration) notFound();
  const { versions } = configuration;
  const asked = Number((await searchParams).version);
  const inForce = versions.find(({ content }) => content.status === 'inForce');
  const draft = versions.find(({ content }) => content.status === 'draft');
  const approved = versions.find(({ content }) => content.status === 'approved');
  const shown = versions.find(({ content }) => content.version === asked) ?? inForce ?? versions[0];
  const mayWrite = may(person, 'writeConfiguration');
  const whole = shown ? await loadWholeStanding(db, shown.content) : null;
  return (
    <Page
      title={configuration.name}
      mark={configuration.code}
      breadcrumb={[{ label: 'Configurations', href: '/configurations' }]}
      actions={
        draft ? (
          <>
            <LinkButton href={`/configurations/${configuration.id}/approve`} kind="primary">
              {`Try and approve version ${draft.content.version}`}
            </LinkButton>
            <LinkButton href={`/configurations/${configuration.id}/edit`}>
              {mayWrite
                ? `Go on with version ${draft.content.version}`
                : `See the draft of version ${draft.content.version}`}
            </LinkButton>
          </>
        ) : approved && may(person, 'approveConfiguration') ? (
          <ApprovalBack
            configurationId={configuration.id}
            versionId={approved.content.id}
            version={approved.content.version}
            baseRevision={approved.revision}
          />
        ) : mayWrite && !approved && !configuration.withdrawnAt ? (
          <BeginDraftButton id={configuration.id} next={(versions[0]?.content.version ?? 0) + 1} />
        ) : null
      }
    >
      {shown && whole ? (
        <>
          <p>
            <Status tone={VERSION_TONES[shown.content.status]}>
              {`Version ${shown.content.version}, ${versionWords(shown.content.status, shown.inForceFrom)}`}
            </Status>{' '}
            {shown.note ? <span className={styles.soft}>{shown.note}</span> : null}
          </p>
          <FigureRow>
            <Figure size="medium" label="Lines" value={shown.content.lines.length} />
            <Figure size="medium" label="Pieces" value={whole.standing.figures.pieces.expected} />
            <Figure
              size="medium"
              label="Must-haves"
              value={whole.standing.figures.mustHaves.of}
              note="lines of class 1 and 2"
            />
            <Figure
              size="medium"
              label="Mass when whole"
              value={
                whole.standing.figures.mass.exact
                  ? writeGrams(whole.standing.figures.mass.foundGrams)
                  : `≥ ${writeGrams(whole.standing.figures.mass.foundGrams)}`
              }
              note={whole.standing.figures.mass.limits
                .map(
                  ({ limitGrams, state }) =>
                    `${state === 'notEstablished' ? 'not established against' : state} ${writeGrams(limitGrams)}`,
                )
                .join(' · ')}
            />
          </FigureRow>
          <Section title="Constructs it is meant to allow" note="from a whole set alone">
            {whole.standing.promises.length === 0 ? (
              <p>It promises no construct.</p>
            ) : (
              <ul className={styles.promises}>
                {whole.standing.promises.map(({ name, outcome, steps, stepsPossible }) => (
                  <li key={name}>
                    <Status tone={outcome === 'yes' ? 'good' : outcome === 'no' ? 'stop' : 'unknown'}>
                      {outcome === 'yes'
                        ? 'buildable'
                        : outcome === 'no'
                          ? 'not buildable'
                          : 'not established'}
                    </Status>
                    <strong>{name}</strong>
                    <span className={styles.soft}>{`${stepsPossible} of ${steps} steps`}</span>
                  </li>
                ))}
              </ul>
            )}
          </Section>
          <Section title="What it asks for">
            <ClassKey />
            {shown.content.lines.length === 0 ? (
              <EmptyState title="It has no lines yet">Lines are added in the draft.</EmptyState>
            ) : (
              <VersionContents
                layers={layoutOf(shown.content.layers, shown.content.lines, whole.items)}
                items={whole.items}
              />
            )}
          </Section>
        </>
      ) : null}
      <Section
        title="Does it earn its place"
        note="line by line, over past cases"
        actions={<LinkButton href={`/configurations/${configuration.id}/review`}>Review its use</LinkButton>}
      >
        <p className={styles.soft}>
          What past cases used of it, how sure so many cases make us, and what each line costs kept or
          pouched.
        </p>
      </Section>
      <Section title="Versions" note="the newest first">
        <VersionList configuration={configuration} />
      </Section>
      <UseSection configuration={configuration} person={person} />
      <Section title="Sets that follow it" note={`${configuration.sets.length}`}>
        <ul className={styles.versions}>
          {configuration.sets.map(({ id, code, versionId }) => {
            const follows = versions.find(({ content }) => content.id === versionId);
            return (
              <li key={id}>
                <Link href={`/sets/${id}`}>{code}</Link>
                <span className={styles.soft}>{`version ${follows?.content.version ?? 'not known'}`}</span>
              </li>
            );
          })}
        </ul>
      </Section>
    </Page>
  );
}

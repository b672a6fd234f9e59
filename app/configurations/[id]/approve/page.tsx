import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { TrialSection } from '@/app/_changes/trial-section';
import { agreeWaits } from '@/app/_changes/waits';
import { Waits } from '@/app/_changes/waits-line';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { keptCatalogue } from '@/db/queries/caseKit';
import { versionBasisDigest, versionContentDigest } from '@/db/queries/changes/configurationDigests';
import { type TrialSubject, trialsOf } from '@/db/queries/changes/trials';
import { findConfiguration } from '@/db/queries/configurations';
import { may } from '@/lib/people/permissions';
import { checkVersion } from '@/lib/sets/checkVersion';
import { compareVersions } from '@/lib/sets/compareVersions';
import { wallClock } from '@/lib/theatre/localTime';
import { versionChangeRows } from '@/lib/wording/versionChanges';
import { SideBySide } from '../../_parts/side-by-side';
import { ApproveVersion } from './approve-version';

export const metadata: Metadata = { title: 'Try and approve a version' };
export const dynamic = 'force-dynamic';

/** A draft on its way into force: what differs, what is wrong with it, what it would do, and the second person's approval. */
export default async function ApprovePage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/configurations/[id]/approve');
  const configuration = await findConfiguration(db, (await params).id);
  if (!configuration) notFound();
  const back = [
    { label: 'Configurations', href: '/configurations' },
    { label: configuration.code, href: `/configurations/${configuration.id}` },
  ];
  const draft = configuration.versions.find(({ content }) => content.status === 'draft');
  if (!draft) {
    return (
      <Page title={configuration.name} breadcrumb={back}>
        <EmptyState
          title="There is no draft to approve"
          action={<LinkButton href={`/configurations/${configuration.id}`}>To the configuration</LinkButton>}
        >
          Begin the next version from the configuration’s page.
        </EmptyState>
      </Page>
    );
  }
  const inForce = configuration.versions.find(({ content }) => content.status === 'inForce');
  const today = wallClock(now()).date;
  const versionId = draft.content.id;
  const subject: TrialSubject = { kind: 'configuration-version', id: versionId, change: 'putInForce' };
  const [catalogue, content, basisDigest] = await Promise.all([
    keptCatalogue(db),
    versionContentDigest(db.read, versionId),
    versionBasisDigest(db.read, configuration.id, today),
  ]);
  const trials = await trialsOf(db, subject, content ?? '');
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const problems = checkVersion(draft.content, items);
  const mayAgree = may(person, 'approveConfiguration');
  const waits = agreeWaits({
    trials,
    me: person,
    mayAgree,
    first: draft.draftedBy?.id ?? null,
    basisDigest,
  });
  return (
    <Page
      title={`${configuration.name}, version ${draft.content.version}`}
      mark={<Status tone="attention">in draft</Status>}
      lead={draft.note ?? 'Nobody has written down what changes, and why.'}
      breadcrumb={back}
      actions={
        <>
          <ApproveVersion
            configurationId={configuration.id}
            versionId={versionId}
            version={draft.content.version}
            baseRevision={draft.revision}
            today={today}
            trialId={trials.find(({ by }) => by.id === person.id)?.id ?? null}
            waits={problems.length > 0 ? 'Something is wrong with it.' : waits}
          />
          <LinkButton href={`/configurations/${configuration.id}/edit`}>Change the draft</LinkButton>
        </>
      }
    >
      {problems.length > 0 ? (
        <ProblemSummary
          problems={problems.map(({ path, message }) => ({ path: path.join('.'), sentence: message }))}
          focus={false}
          heading={`${problems.length === 1 ? 'One thing keeps' : `${problems.length} things keep`} it from being put in force`}
        />
      ) : null}
      <TrialSection
        title="If this version were in force"
        subject={subject}
        trials={trials}
        me={person.id}
        drafter={draft.draftedBy?.id ?? null}
        basisDigest={basisDigest}
        mayTry={may(person, 'writeConfiguration')}
      >
        <Waits sentence={waits} by={draft.draftedBy?.name ?? null} />
        <p>
          Tried as if every set that follows it had been refitted: what it adds put in, what it takes out
          taken out, and what is short now still short. A set is refitted on the bench, when it is next there.
        </p>
      </TrialSection>
      <Section
        title="What differs"
        note={inForce ? `from version ${inForce.content.version}, in force` : 'it is the first version'}
      >
        {inForce ? (
          <SideBySide
            rows={versionChangeRows(
              compareVersions(inForce.content, draft.content),
              (id) => items.get(id)?.name ?? id,
            )}
            heads={[`Version ${inForce.content.version}`, `Version ${draft.content.version}`]}
            caption={`What differs between version ${inForce.content.version} and version ${draft.content.version}`}
          />
        ) : (
          <p>
            <Link href={`/configurations/${configuration.id}?version=${draft.content.version}`}>
              All that it asks for
            </Link>
          </p>
        )}
      </Section>
    </Page>
  );
}

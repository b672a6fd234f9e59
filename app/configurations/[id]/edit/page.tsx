import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { keptCatalogue } from '@/db/queries/caseKit';
import { findConfiguration } from '@/db/queries/configurations';
import { listPlanSources } from '@/db/queries/planSources';
import type { Item } from '@/lib/catalogue/item';
import { may } from '@/lib/people/permissions';
import { checkVersion, remarksOnVersion } from '@/lib/sets/checkVersion';
import { textOf } from '@/lib/sets/versionDraft';
import { DraftEditor } from './draft-editor';
import type { EditorItem } from './editor-types';

export const metadata: Metadata = { title: 'Draft of a configuration' };
export const dynamic = 'force-dynamic';

export default async function EditPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/configurations/[id]/edit');
  const [configuration, catalogue, sources] = await Promise.all([
    findConfiguration(db, (await params).id),
    keptCatalogue(db),
    listPlanSources(db, person.id),
  ]);
  if (!configuration) notFound();
  const draft = configuration.versions.find(({ content }) => content.status === 'draft');
  const back = [
    { label: 'Configurations', href: '/configurations' },
    { label: configuration.code, href: `/configurations/${configuration.id}` },
  ];
  if (!draft) {
    return (
      <Page title={configuration.name} breadcrumb={back}>
        <EmptyState
          title="There is no draft"
          action={<LinkButton href={`/configurations/${configuration.id}`}>To the configuration</LinkButton>}
        >
          The version in force never changes. Begin the next version from the configuration’s page.
        </EmptyState>
      </Page>
    );
  }
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const standing = [
    ...checkVersion(draft.content, items).map((one) => ({ ...one, stops: true })),
    ...remarksOnVersion(draft.content, items).map((one) => ({ ...one, stops: false })),
  ].map(({ path, message, stops }) => ({ path: path.join('.'), sentence: message, stops }));
  return (
    <Page
      title={configuration.name}
      mark={<Status tone="attention">{`Version ${draft.content.version} in draft`}</Status>}
      lead={`Drafted by ${draft.draftedBy?.name ?? 'a person not stated'}. A second person puts it in force.`}
      breadcrumb={back}
    >
      <DraftEditor
        key={`${draft.content.id}:${draft.revision}`}
        configurationId={configuration.id}
        versionId={draft.content.id}
        version={draft.content.version}
        revision={draft.revision}
        start={textOf(draft.content, draft.note)}
        standing={standing}
        items={catalogue.map(editorItem)}
        sources={sources}
        mayWrite={may(person, 'writeConfiguration')}
      />
    </Page>
  );
}

/** What the editor needs of an item; holes and the rest stay on the server. */
function editorItem(item: Item): EditorItem {
  const { id, kind, name, code, status } = item;
  const screw = item.kind === 'screw' ? { screwFamily: item.screwFamily, lengthUm: item.lengthUm } : {};
  return { id, kind, name, code, status, ...screw };
}

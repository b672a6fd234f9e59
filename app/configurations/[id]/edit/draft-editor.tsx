'use client';

import { useRouter } from 'next/navigation';
import { useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ComboField } from '@/app/_ui/combo-field';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { LinkButton } from '@/app/_ui/link-button';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { TextArea } from '@/app/_ui/text-area';
import { showToast } from '@/app/_ui/toast';
import { type Sent, sendJson } from '@/app/sets/_parts/send-json';
import type { ItemId } from '@/lib/identity/ids';
import { compareVersions, type VersionContent } from '@/lib/sets/compareVersions';
import { entryOf, readableLines, type VersionText } from '@/lib/sets/versionDraft';
import { versionChangeRows } from '@/lib/wording/versionChanges';
import styles from '../../_parts/configurations.module.css';
import { SideBySide } from '../../_parts/side-by-side';
import type { EditorItem, EditorProblem } from './editor-types';
import { LayerEditor } from './layer-editor';
import { PromiseEditor, type PromiseSource } from './promise-editor';

interface Theirs {
  revision: number;
  content: VersionContent;
}

/** The whole draft of a version: everything is edited here and saved at once, over the revision it was read at. */
export function DraftEditor({
  configurationId,
  versionId,
  version,
  revision,
  start,
  standing,
  items,
  sources,
  mayWrite,
}: {
  configurationId: string;
  versionId: string;
  version: number;
  revision: number;
  start: VersionText;
  standing: EditorProblem[];
  items: EditorItem[];
  sources: PromiseSource[];
  mayWrite: boolean;
}) {
  const router = useRouter();
  const [draft, setDraft] = useState(start);
  const [base, setBase] = useState(revision);
  const [refused, setRefused] = useState<EditorProblem[]>([]);
  const [theirs, setTheirs] = useState<Theirs | null>(null);
  const [pending, setPending] = useState(false);
  const byId = useMemo(() => new Map(items.map((item) => [item.id, item])), [items]);
  const changed = JSON.stringify(draft) !== JSON.stringify(start);
  const name = (id: ItemId) => byId.get(id)?.name ?? id;
  // what the saved draft has wrong is shown beside its fields until the draft is changed; then a save says it afresh
  const beside = refused.length > 0 ? refused : changed ? [] : standing;
  const address = `/api/v1/configurations/${configurationId}`;

  async function act(send: () => Promise<Sent<unknown, Theirs>>, done: () => void): Promise<void> {
    setPending(true);
    try {
      const answer = await send();
      if (answer.ok) {
        setRefused([]);
        setTheirs(null);
        done();
      } else if (answer.current && 'content' in answer.current) setTheirs(answer.current);
      else
        setRefused(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
    } catch {
      setRefused([{ path: '', sentence: 'The server can’t be reached; nothing was saved.' }]);
    } finally {
      setPending(false);
    }
  }

  const save = (over: number) =>
    act(
      () => sendJson(`${address}/draft`, { versionId, baseRevision: over, entry: entryOf(draft) }, 'PUT'),
      () => {
        showToast({ tone: 'good', word: 'Saved', text: `Version ${version} in draft.` });
        router.refresh();
      },
    );

  if (theirs) {
    const mine: VersionContent = { ...draft, lines: readableLines(draft.lines) };
    return (
      <Section title="Somebody else saved this draft meanwhile" look="sheet">
        <p>Nothing was saved. This is where what you hold differs from what stands now.</p>
        <SideBySide
          rows={versionChangeRows(compareVersions(theirs.content, mine), name)}
          heads={['Stands now', 'Yours']}
          caption="Both drafts, where they differ"
        />
        <ButtonRow>
          <Button
            kind="primary"
            onClick={() => {
              setTheirs(null);
              router.refresh();
            }}
          >
            Take what stands, leave mine
          </Button>
          <Button
            onClick={() => {
              setBase(theirs.revision);
              setTheirs(null);
            }}
          >
            Go on with mine
          </Button>
        </ButtonRow>
        <p className={styles.soft}>Going on with yours replaces what stands when you save.</p>
      </Section>
    );
  }

  const boxes = (kind: 'basket' | 'container') =>
    items
      .filter((item) => item.kind === kind)
      .map(({ id, name: label, code }) => ({ value: id, label, note: code }));
  return (
    <div className={styles.editor}>
      <ProblemSummary problems={refused} />
      {refused.length === 0 && !changed && standing.length > 0 ? (
        <StandingProblems problems={standing} />
      ) : null}
      {draft.layers.map((layer, at) => (
        <LayerEditor
          key={layer.layer}
          at={at}
          layer={layer}
          draft={draft}
          items={items}
          byId={byId}
          problems={beside}
          onDraft={setDraft}
        />
      ))}
      <ButtonRow>
        <Button
          disabled={draft.layers.length >= 12}
          onClick={() => {
            const layer = Math.max(0, ...draft.layers.map((one) => one.layer)) + 1;
            setDraft({ ...draft, layers: [...draft.layers, { layer, name: `Layer ${layer}` }] });
          }}
        >
          Add a layer
        </Button>
      </ButtonRow>
      <PromiseEditor
        promises={draft.promises}
        sources={sources}
        problems={beside}
        onPromises={(promises) => setDraft({ ...draft, promises })}
      />
      <Section title="Basket, container and note">
        <FieldGrid>
          {(['basket', 'container'] as const).map((kind) => (
            <ComboField
              key={kind}
              name={`${kind}ItemId`}
              label={kind === 'basket' ? 'Basket' : 'Container'}
              options={boxes(kind)}
              value={draft[`${kind}ItemId`]}
              onValue={(value) => setDraft({ ...draft, [`${kind}ItemId`]: value })}
              problems={problemsAt(beside, `${kind}ItemId`)}
            />
          ))}
        </FieldGrid>
        <TextArea
          name="note"
          label="What changes, and why"
          rows={2}
          maxLength={500}
          value={draft.note}
          onValue={(note) => setDraft({ ...draft, note })}
          problems={problemsAt(beside, 'note')}
        />
      </Section>
      <div className={styles.foot}>
        <p role="status">{changed ? 'Changed and not saved yet' : 'As saved'}</p>
        <ButtonRow>
          {mayWrite ? (
            <ConfirmDialog
              title={`Discard the draft of version ${version}?`}
              confirm="Discard the draft"
              danger
              trigger={{ label: 'Discard the draft', kind: 'quiet' }}
              onConfirm={async () => {
                const answer = await sendJson(
                  `${address}/draft`,
                  { versionId, baseRevision: base },
                  'DELETE',
                );
                if (!answer.ok) return answer.sentence;
                router.push(`/configurations/${configurationId}`);
                router.refresh();
                return undefined;
              }}
            >
              <p>What is in force stays as it is.</p>
            </ConfirmDialog>
          ) : null}
          {changed ? null : (
            <LinkButton href={`/configurations/${configurationId}/approve`}>
              Try it and put it in force
            </LinkButton>
          )}
          <Button kind="primary" disabled={!mayWrite} pending={pending} onClick={() => save(base)}>
            Save the draft
          </Button>
        </ButtonRow>
      </div>
    </div>
  );
}

function StandingProblems({ problems }: { problems: readonly EditorProblem[] }) {
  const stops = problems.filter((one) => one.stops);
  const remarks = problems.filter((one) => !one.stops);
  return (
    <>
      {stops.length > 0 ? (
        <ProblemSummary
          problems={stops}
          focus={false}
          heading={`${stops.length === 1 ? 'One thing keeps' : `${stops.length} things keep`} it from being put in force`}
        />
      ) : null}
      {remarks.length > 0 ? (
        <Section
          title="Worth a second look"
          level={3}
          note={`${remarks.length}, none of which prevents anything`}
        >
          <ul>
            {[...new Set(remarks.map(({ sentence }) => sentence))].map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </Section>
      ) : null}
    </>
  );
}

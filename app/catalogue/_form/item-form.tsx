'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid } from '@/app/_ui/field-grid';
import { LinkButton } from '@/app/_ui/link-button';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { showToast } from '@/app/_ui/toast';
import type { ItemDraft } from '@/lib/catalogue/form/draft';
import { KIND_FIELDS, SHARED_FIELDS } from '@/lib/catalogue/form/fields';
import type { ItemKind } from '@/lib/catalogue/item';
import { ConflictPanel } from './conflict-panel';
import { EndsEditor } from './ends-editor';
import { FieldInput } from './field-input';
import { fieldName, shownAt } from './field-names';
import styles from './form.module.css';
import { useItemForm } from './form-state';
import { HolesEditor } from './holes-editor';
import { SketchPreview } from './sketch-preview';

interface Sent {
  detail?: string;
  because?: string;
  current?: { draft: ItemDraft; revision: number } | null;
  errors?: { path: (string | number)[]; message: string }[];
}

/** Adds an item, or edits one from the revision it was opened at. The drawing follows the typing. */
export function ItemForm({
  kind,
  id,
  revision: opened,
  first,
  makers,
}: {
  kind: ItemKind;
  id: string;
  /** `null` for an item that is new. */
  revision: number | null;
  first: ItemDraft;
  makers: readonly { id: string; name: string }[];
}) {
  const router = useRouter();
  const form = useItemForm(first);
  const [revision, setRevision] = useState(opened);
  const [pending, setPending] = useState(false);
  const [conflict, setConflict] = useState<Sent['current']>(null);
  const isNew = opened === null;

  async function send(over: number | null) {
    setPending(true);
    try {
      const response = await fetch(isNew ? '/api/v1/catalogue/items' : `/api/v1/catalogue/items/${id}`, {
        method: isNew ? 'POST' : 'PUT',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(isNew ? { id, kind, draft: form.draft } : { revision: over, draft: form.draft }),
      });
      if (response.ok) {
        setConflict(null);
        form.setProblems([]);
        showToast({ tone: 'good', word: 'Saved', text: `${form.draft.code ?? ''} is in the catalogue.` });
        router.push(`/catalogue/${id}`);
        return;
      }
      const answer = (await response.json()) as Sent;
      if (answer.because === 'conflict' && answer.current) setConflict(answer.current);
      form.setProblems(
        answer.because === 'conflict' && answer.current
          ? []
          : (answer.errors ?? [{ path: [], message: answer.detail ?? 'It could not be saved.' }]),
      );
    } catch {
      form.setProblems([
        { path: [], message: 'The server can’t be reached. What you typed is still here: try again.' },
      ]);
    } finally {
      setPending(false);
    }
  }

  const own = KIND_FIELDS[kind];
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!pending) void send(revision);
      }}
    >
      <ProblemSummary
        problems={form.problems.map(({ path, sentence }) => ({
          path: shownAt(kind, path),
          sentence: path === '' ? sentence : `${fieldName(kind, path, form.draft)}: ${sentence}`,
        }))}
      />
      {conflict ? (
        <ConflictPanel
          kind={kind}
          mine={form.draft}
          theirs={conflict.draft}
          onTheirs={() => {
            form.replace(() => conflict.draft);
            setRevision(conflict.revision);
            setConflict(null);
          }}
          onMine={() => {
            setRevision(conflict.revision);
            void send(conflict.revision);
          }}
        />
      ) : null}
      <div className={styles.columns}>
        <div className={styles.fields}>
          <Section title="What it is">
            <FieldGrid>
              {SHARED_FIELDS.map((field) => (
                <FieldInput key={field.key} field={field} form={form} makers={makers} />
              ))}
            </FieldGrid>
          </Section>
          {own.some(({ entry }) => entry !== 'holes' && entry !== 'ends') ? (
            <Section title="Form and dimensions" note="empty where nobody has stated it">
              <FieldGrid>
                {own.map((field) => (
                  <FieldInput key={field.key} field={field} form={form} makers={makers} />
                ))}
              </FieldGrid>
            </Section>
          ) : null}
        </div>
        <SketchPreview kind={kind} draft={form.draft} />
      </div>
      {own.some(({ entry }) => entry === 'ends') ? <EndsEditor form={form} /> : null}
      {own.some(({ entry }) => entry === 'holes') ? <HolesEditor form={form} /> : null}
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          {isNew ? 'Add to the catalogue' : 'Save'}
        </Button>
        <LinkButton href={isNew ? '/catalogue' : `/catalogue/${id}`}>Go back without saving</LinkButton>
      </ButtonRow>
    </form>
  );
}

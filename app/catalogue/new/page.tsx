import type { Metadata } from 'next';
import Link from 'next/link';
import { newId } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ThumbDrawing } from '@/app/_ui/drawing/ThumbDrawing';
import { Page } from '@/app/_ui/page';
import { findItem, listMakers } from '@/db/queries/catalogueItem';
import { blankDraft, draftFromItem } from '@/lib/catalogue/form/draft';
import { sketchDraft } from '@/lib/catalogue/form/read';
import { ITEM_KINDS, type ItemKind } from '@/lib/catalogue/item';
import { condense } from '@/lib/documents/drawing/condense';
import { drawItem } from '@/lib/documents/drawing/item';
import { may } from '@/lib/people/permissions';
import { KIND_WORDS, sentenceCase } from '@/lib/wording/catalogue';
import styles from '../_form/form.module.css';
import { ItemForm } from '../_form/item-form';
import { NotPermitted } from '../_form/not-permitted';

export const metadata: Metadata = { title: 'Add an item' };

type Search = Promise<Record<string, string | string[] | undefined>>;

export default async function NewItemPage({ searchParams }: { searchParams: Search }) {
  const { db, person } = await enter('/catalogue/new');
  const { kind: asked, like } = await searchParams;
  if (!may(person, 'editCatalogue')) return <NotPermitted title="Add an item" person={person.name} />;
  const pattern = typeof like === 'string' ? await findItem(db, like) : null;
  const kind = pattern?.item.kind ?? ITEM_KINDS.find((one) => one === asked);
  if (!kind) return <ChooseKind />;
  const first = pattern ? { ...draftFromItem(pattern.item), code: '', gtin: '' } : blankDraft(kind);
  return (
    <Page
      title={`Add a ${KIND_WORDS[kind]}`}
      lead={
        pattern
          ? `Made like ${pattern.item.code}: give it a code of its own.`
          : 'State what is known; what is left empty is shown as not stated.'
      }
      breadcrumb={[
        { label: 'Catalogue', href: '/catalogue' },
        { label: 'Add an item', href: '/catalogue/new' },
      ]}
    >
      <ItemForm kind={kind} id={newId('item')} revision={null} first={first} makers={await listMakers(db)} />
    </Page>
  );
}

function ChooseKind() {
  return (
    <Page
      title="Add an item"
      lead="What kind of thing is it?"
      breadcrumb={[{ label: 'Catalogue', href: '/catalogue' }]}
    >
      <ul className={styles.kinds}>
        {ITEM_KINDS.map((kind) => (
          <li key={kind}>
            <Link href={`/catalogue/new?kind=${kind}`} className={styles.kind}>
              <span className={styles.kindDrawing}>{emblemOf(kind)}</span>
              {sentenceCase(KIND_WORDS[kind])}
            </Link>
          </li>
        ))}
      </ul>
    </Page>
  );
}

/** What an item of a kind looks like while nothing of it is stated: dashed. */
function emblemOf(kind: ItemKind) {
  const sketch = sketchDraft(kind, {
    ...blankDraft(kind),
    ...(kind === 'rack' ? { rows: '4', columns: '8' } : {}),
  });
  return sketch ? <ThumbDrawing thumb={condense(drawItem(sketch))} /> : null;
}

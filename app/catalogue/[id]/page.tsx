import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Suspense } from 'react';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { Status } from '@/app/_ui/status';
import { keptCatalogue } from '@/db/queries/caseKit';
import { findItem, findItemUse, findLookAlikes, itemHistory, listMakers } from '@/db/queries/catalogueItem';
import { loadFitEngine } from '@/db/queries/fitRules';
import type { Item } from '@/lib/catalogue/item';
import { missingValues } from '@/lib/catalogue/missing';
import { partnersOf } from '@/lib/catalogue/partners';
import { may } from '@/lib/people/permissions';
import { KIND_WORDS, sentenceCase } from '@/lib/wording/catalogue';
import { itemValues } from '@/lib/wording/itemValues';
import styles from '../_detail/detail.module.css';
import { HistoryList } from '../_detail/history';
import { ItemDrawing } from '../_detail/item-drawing';
import { ItemFits } from '../_detail/item-fits';
import { EndTable, HoleTable } from '../_detail/item-parts';
import { ItemUseLists } from '../_detail/item-use';
import { LookAlikes } from '../_detail/look-alikes';
import { WithdrawItem } from '../_detail/withdraw';
import { itemStatusTag } from '../item-status';

type Params = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  const { db } = await enter('/catalogue/[id]');
  const found = await findItem(db, (await params).id);
  return { title: found ? `${found.item.code} ${found.item.name}` : 'No such item' };
}

export default async function ItemPage({ params }: Params) {
  const { db, person } = await enter('/catalogue/[id]');
  const found = await findItem(db, (await params).id);
  if (!found) notFound();
  const { item, revision, maker } = found;
  const [use, twins, history, makers] = await Promise.all([
    findItemUse(db, item),
    item.kind === 'plate' ? findLookAlikes(db, item) : [],
    itemHistory(db, item.id),
    listMakers(db),
  ]);
  const mayEdit = may(person, 'editCatalogue');
  const missing = missingValues(item).length;
  return (
    <Page
      title={item.name}
      mark={
        <>
          {item.code} {itemStatusTag(item.status)}
        </>
      }
      lead={`${sentenceCase(KIND_WORDS[item.kind])} by ${maker}${item.nickname ? `, called “${item.nickname}”` : ''}.`}
      breadcrumb={[{ label: 'Catalogue', href: '/catalogue' }]}
      actions={
        mayEdit ? (
          <>
            <LinkButton href={`/catalogue/${item.id}/edit`}>Edit</LinkButton>
            <LinkButton href={`/catalogue/new?like=${item.id}`}>Add one like it</LinkButton>
            {item.status === 'current' ? (
              <WithdrawItem id={item.id} code={item.code} revision={revision} use={use} />
            ) : null}
          </>
        ) : null
      }
    >
      <div className={styles.head}>
        <ItemDrawing item={item} />
        <Section
          title="Values"
          note={
            missing > 0 ? (
              <Status tone="unknown" look="plain">
                {missing === 1 ? '1 value not stated' : `${missing} values not stated`}
              </Status>
            ) : undefined
          }
        >
          <DefinitionList
            items={itemValues(item, maker).map(({ key, term, value, unit }) => ({
              term,
              value,
              ...(unit ? { unit } : {}),
              ...(key === 'gtin' && value ? { note: 'check digit right' } : {}),
            }))}
          />
        </Section>
      </div>
      {item.kind === 'plate' && item.holes.length > 0 ? (
        <Section title="Holes" note={`${item.holes.length}`}>
          <HoleTable holes={item.holes} />
        </Section>
      ) : null}
      {item.kind === 'drillSleeve' ? (
        <Section title="Ends">
          <EndTable ends={item.ends} />
        </Section>
      ) : null}
      {item.kind === 'plate' && twins.length > 0 ? (
        <Section title="Easily taken for it" note={item.lookAlikeOf ?? undefined}>
          <LookAlikes plates={[item, ...twins]} makers={new Map(makers.map(({ id, name }) => [id, name]))} />
        </Section>
      ) : null}
      <Section title="Where it is, and what counts on it">
        <ItemUseLists use={use} />
      </Section>
      <Section title="What it fits" note="by the fit rules in force, among current items">
        <Suspense fallback={<Skeleton lines={6} />}>
          <Fits item={item} />
        </Suspense>
      </Section>
      {history.length > 0 ? (
        <Section title="What was done">
          <HistoryList entries={history} />
        </Section>
      ) : null}
    </Page>
  );
}

/** Asked of the whole catalogue, so it follows when the rest of the page is there. */
async function Fits({ item }: { item: Item }) {
  const { db } = await enter('/catalogue/[id]');
  const [catalogue, engine] = await Promise.all([keptCatalogue(db), loadFitEngine(db)]);
  return <ItemFits partners={partnersOf(engine, catalogue, item)} />;
}

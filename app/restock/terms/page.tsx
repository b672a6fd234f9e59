import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { keptCatalogue } from '@/db/queries/caseKit';
import { listTerms } from '@/db/queries/restock/terms';
import { may } from '@/lib/people/permissions';
import { momentWords } from '@/lib/wording/sets';
import { TermsTable } from '../_parts/terms-table';

export const metadata: Metadata = { title: 'Terms of supply' };
export const dynamic = 'force-dynamic';

export default async function TermsPage() {
  const { db, person } = await enter('/restock/terms');
  const at = now();
  const mayKeep = may(person, 'keepSupplyTerms');
  const [terms, catalogue] = await Promise.all([listTerms(db), mayKeep ? keptCatalogue(db) : []]);
  const stated = new Set(terms.map(({ of }) => of.id));
  return (
    <Page
      title="Terms of supply"
      lead="How long each maker takes, how often is ordered from it, and what differs for single items. What is left open falls back to the maker, then to the hospital’s settings; a lead time nobody has stated stays unknown, and nothing is forecast on it."
      breadcrumb={[{ label: 'Restock', href: '/restock' }]}
      actions={<LinkButton href="/settings/restock">Service levels and other settings</LinkButton>}
    >
      <TermsTable
        rows={terms.map(({ changedAt, changedBy, ...row }) => ({
          ...row,
          changed: changedAt === null ? null : `${changedBy ?? ''}, ${momentWords(changedAt, at)}`,
        }))}
        items={
          mayKeep
            ? catalogue
                .filter(({ id, status }) => status === 'current' && !stated.has(id))
                .map(({ id, code, name }) => ({ value: id, label: code, note: name }))
            : null
        }
      />
    </Page>
  );
}

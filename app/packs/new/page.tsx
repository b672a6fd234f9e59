import type { Metadata } from 'next';
import Link from 'next/link';
import { newId, now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { keptCatalogue } from '@/db/queries/caseKit';
import { lastPouches } from '@/db/queries/packs/pack';
import { PACK_STATE_WORDS } from '@/lib/wording/packs';
import { momentWords } from '@/lib/wording/sets';
import { PouchForm } from './pouch-form';

export const metadata: Metadata = { title: 'Pack a pouch' };
export const dynamic = 'force-dynamic';

/** One item in a pouch by itself, and the last ones that were packed. */
export default async function PouchPage() {
  const { db } = await enter('/packs/new');
  const at = now();
  const [catalogue, last] = await Promise.all([keptCatalogue(db), lastPouches(db, 12)]);
  const items = catalogue.filter(
    ({ status, use, suppliedSterile }) =>
      status === 'current' && !(use === 'singleUse' && suppliedSterile === true),
  );
  return (
    <Page
      bench
      title="Pack a pouch"
      lead="One item, packed and sterilised by itself. It becomes stock when its load is accepted."
      breadcrumb={[{ label: 'Stock', href: '/stock' }]}
    >
      <PouchForm
        packId={newId('pack')}
        items={items.map(({ id, name, code }) => ({ value: id, label: name, note: code }))}
      />
      {last.length > 0 ? (
        <Section title="Last packed">
          <ul>
            {last.map(({ id, number, item, by, at: packed, state }) => (
              <li key={id}>
                <Link href={`/packs/${id}`}>{number}</Link>
                {`, ${item}, ${momentWords(packed, at)} by ${by}: ${PACK_STATE_WORDS[state]}`}
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
    </Page>
  );
}

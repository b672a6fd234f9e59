import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { keptCatalogue } from '@/db/queries/caseKit';
import { keptVersions } from '@/db/queries/keptVersions';
import { findSet } from '@/db/queries/sets';
import { may } from '@/lib/people/permissions';
import { canBeCounted } from '@/lib/sets/count';
import { countWords } from '@/lib/wording/counts';
import { CountScreen } from './count-screen';
import { countSubject } from './count-subject';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/sets/[id]/count');
  const set = await findSet(db, (await params).id);
  return { title: set ? `Count ${set.code}` : 'No such set' };
}

export default async function CountPage({ params }: Props) {
  const { db, person } = await enter('/sets/[id]/count');
  const set = await findSet(db, (await params).id);
  if (!set) notFound();
  const [versions, catalogue] = await Promise.all([keptVersions(db), keptCatalogue(db)]);
  const layers = versions.get(set.version.id)?.layers ?? [];
  const refusal = !canBeCounted(set.step)
    ? countWords.sealed(set.code)
    : may(person.role, 'countSet')
      ? null
      : countWords.notPermitted(person.name);
  return (
    <Page
      bench
      title={`Count ${set.code}`}
      lead={set.configuration.name}
      breadcrumb={[
        { label: 'Sets', href: '/sets' },
        { label: set.code, href: `/sets/${set.id}` },
      ]}
    >
      {refusal ? (
        <EmptyState
          title="This set can’t be counted now"
          action={<LinkButton href={`/sets/${set.id}`}>{`Back to ${set.code}`}</LinkButton>}
        >
          {refusal}
        </EmptyState>
      ) : set.lines.length === 0 ? (
        <EmptyState title="There is nothing to count">
          The version it follows has no lines.{' '}
          <Link href={`/configurations/${set.configuration.id}`}>See its configuration</Link>.
        </EmptyState>
      ) : (
        <CountScreen key={person.id} personId={person.id} subject={countSubject(set, layers, catalogue)} />
      )}
    </Page>
  );
}

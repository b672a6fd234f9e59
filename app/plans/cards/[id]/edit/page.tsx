import type { Metadata } from 'next';
import { forbidden, notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { findCard } from '@/db/queries/cards/cards';
import { cardWords } from '@/lib/wording/cards';
import { CardForm } from '../../card-form';
import { cardFormFacts } from '../../form-facts';

export const metadata: Metadata = { title: 'Change a preference card' };
export const dynamic = 'force-dynamic';

export default async function EditCardPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/plans/cards/[id]/edit');
  const card = await findCard(db, (await params).id);
  if (!card) notFound();
  if (card.surgeon.id !== person.id) forbidden();
  const { procedure, body, version } = card;
  const breadcrumb = [
    { label: 'Starts and preference cards', href: '/plans' },
    { label: procedure.name, href: `/plans/cards/${card.id}` },
  ];
  if (card.retiredAt !== null) {
    return (
      <Page title="Change the card" breadcrumb={breadcrumb}>
        <EmptyState
          title="This card is retired"
          action={<LinkButton href={`/plans/cards/${card.id}`}>To the card</LinkButton>}
        >
          {cardWords.retired}
        </EmptyState>
      </Page>
    );
  }
  const facts = await cardFormFacts(db, person.id);
  return (
    <Page
      measure="reading"
      title="Change the card"
      mark={`Version ${version + 1}`}
      lead={`${procedure.name}. The versions before it stay, and cases booked by them keep them.`}
      breadcrumb={breadcrumb}
    >
      <CardForm
        key={version}
        of={{ kind: 'version', id: card.id, baseVersion: version }}
        procedures={[{ id: procedure.id, name: procedure.name, region: procedure.region }]}
        {...facts}
        given={{
          procedureId: procedure.id,
          startIds: body.startIds,
          extras: body.extras.map(({ itemId, quantity, note }) => ({
            itemId,
            quantity: String(quantity),
            note: note ?? '',
          })),
          note: body.note ?? '',
        }}
      />
    </Page>
  );
}

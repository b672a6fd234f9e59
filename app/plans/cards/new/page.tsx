import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { listCards } from '@/db/queries/cards/cards';
import { listProcedures } from '@/db/queries/cards/procedures';
import { CardForm } from '../card-form';
import { cardFormFacts } from '../form-facts';

export const metadata: Metadata = { title: 'Make a preference card' };
export const dynamic = 'force-dynamic';

export default async function NewCardPage() {
  const { db, person } = await enter('/plans/cards/new');
  const [procedures, cards, facts] = await Promise.all([
    listProcedures(db),
    listCards(db),
    cardFormFacts(db, person.id),
  ]);
  const have = cards.filter(({ surgeon, retiredAt }) => surgeon.id === person.id && retiredAt === null);
  return (
    <Page
      measure="reading"
      title="Make a preference card"
      lead="What you want for a procedure, whichever the case. It is yours to change; everybody who prepares a case may read it."
      breadcrumb={[{ label: 'Starts and preference cards', href: '/plans' }]}
    >
      <CardForm
        of={{ kind: 'new' }}
        procedures={procedures
          .filter(({ id, inUse }) => inUse && !have.some(({ procedure }) => procedure.id === id))
          .map(({ id, name, region }) => ({ id, name, region }))}
        {...facts}
        given={{ procedureId: '', startIds: [], extras: [], note: '' }}
      />
    </Page>
  );
}

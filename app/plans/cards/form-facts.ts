import { listStarts } from '@/db/queries/cards/starts';
import { keptCatalogue } from '@/db/queries/caseKit';
import type { Reading } from '@/db/reader';
import { mayBeExtra } from '@/lib/plans/card';

/** What a card is written from: its surgeon's starts, and every item that may be wanted beside a plan. */
export async function cardFormFacts(db: Reading, personId: string) {
  const [starts, catalogue] = await Promise.all([listStarts(db), keptCatalogue(db)]);
  return {
    starts: starts
      .filter(({ owner }) => owner.id === personId)
      .map(({ id, name, construct, retiredAt }) => ({
        id: id as string,
        name,
        region: construct.region as string,
        retired: retiredAt !== null,
      })),
    items: catalogue
      .filter(({ kind, status }) => mayBeExtra(kind) && status === 'current')
      .map(({ id, name, code }) => ({ value: id as string, label: name, note: code })),
  };
}

import { oneOf } from '@/app/api/v1/_reading/one';
import { cardVersions, findCard } from '@/db/queries/cards/cards';

/** One preference card with every version of it. */
export const GET = oneOf('GET /api/v1/plans/cards/[id]', { what: 'card' }, async ({ db, params }) => {
  const card = await findCard(db, params.id);
  return card && { ...card, versions: await cardVersions(db, card.id) };
});

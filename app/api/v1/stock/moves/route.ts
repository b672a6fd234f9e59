import { z } from 'zod';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { shelfMoves } from '@/db/queries/shelf/shelfMoves';

const asked = { item: z.string().max(80).describe('The id of the item.') };

/** Moves of an item onto, off and between the shelves, the newest first; those of heaps you count now are left out. */
export const GET = pagesOf('GET /api/v1/stock/moves', {
  query: asked,
  rows: ({ db, query }, { after, limit }) =>
    shelfMoves(db, query.item, limit, after === null ? null : Number(after[0])),
  keyOf: ({ seq }) => [seq],
});

import { z } from 'zod';
import { listOf } from '@/app/api/v1/_reading/list';
import { asidePiecesOf } from '@/db/queries/turns/asidePieces';

const asked = {
  settled: z.enum(['yes', 'no']).default('no').describe('Those that were settled, or those that nobody has.'),
};

/** Pieces put aside, the longest ago first: those that nobody has settled, unless the settled ones are asked for. */
export const GET = listOf('GET /api/v1/aside', {
  query: asked,
  rows: ({ db, query }) => asidePiecesOf(db, { settled: query.settled === 'yes', limit: 100_000 }),
  keyOf: ({ foundAt, id }) => [foundAt, id],
});

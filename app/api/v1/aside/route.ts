import { listOf } from '@/app/api/v1/_reading/list';
import { asidePiecesOf } from '@/db/queries/turns/asidePieces';

/** Pieces put aside that nobody has settled, the longest waiting first. */
export const GET = listOf('GET /api/v1/aside', {
  rows: ({ db }) => asidePiecesOf(db, { settled: false, limit: 100_000 }),
  keyOf: ({ foundAt, id }) => [foundAt, id],
});

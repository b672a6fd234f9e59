import { listOf } from '@/app/api/v1/_reading/list';
import { packsWaiting } from '@/db/queries/loads/findLoad';

/** Packs that are closed and in no load yet. */
export const GET = listOf('GET /api/v1/loads/waiting', {
  rows: ({ db }) => packsWaiting(db),
  keyOf: ({ packedAt, id }) => [packedAt, id],
});

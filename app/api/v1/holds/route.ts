import { listOf } from '@/app/api/v1/_reading/list';
import { listHeldSets } from '@/db/queries/turns/heldSets';

/** Sets that are held, with every reason. */
export const GET = listOf('GET /api/v1/holds', {
  rows: ({ db }) => listHeldSets(db),
  keyOf: ({ since, id }) => [since, id],
});

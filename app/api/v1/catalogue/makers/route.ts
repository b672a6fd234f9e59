import { listOf } from '@/app/api/v1/_reading/list';
import { listMakers } from '@/db/queries/catalogueItem';

/** Every maker there are items of. */
export const GET = listOf('GET /api/v1/catalogue/makers', {
  rows: ({ db }) => listMakers(db),
  keyOf: ({ id }) => [id],
});

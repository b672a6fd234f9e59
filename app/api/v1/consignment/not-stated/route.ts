import { listOf } from '@/app/api/v1/_reading/list';
import { lotsOfNobodyStated } from '@/db/queries/consignment/owners';

/** Lots on consignment of which nobody has stated the owner. */
export const GET = listOf('GET /api/v1/consignment/not-stated', {
  rows: ({ db }) => lotsOfNobodyStated(db),
  keyOf: ({ itemId, lot }) => [itemId, lot ?? ''],
});

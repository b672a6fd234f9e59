import { now } from '@/app/_server/clock';
import { listOf } from '@/app/api/v1/_reading/list';
import { slotsToRefill } from '@/db/queries/restock/refills';

/** Slots of sets that the shelf could fill now. */
export const GET = listOf('GET /api/v1/restock/refills', {
  rows: ({ db }) => slotsToRefill(db, now()),
  keyOf: ({ key }) => [key],
});

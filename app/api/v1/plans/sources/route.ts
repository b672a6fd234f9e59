import { listOf } from '@/app/api/v1/_reading/list';
import { listPlanSources } from '@/db/queries/planSources';

/** Where a construct can be copied from: your saved starts, then the confirmed plans of cases. */
export const GET = listOf('GET /api/v1/plans/sources', {
  rows: ({ db, person }) => listPlanSources(db, person.id),
  keyOf: ({ key }) => [key],
});

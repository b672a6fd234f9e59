import { listOf } from '@/app/api/v1/_reading/list';
import { findCase, listPlanVersions } from '@/db/queries/cases';

/** Every version of the plan of a case, the newest first. */
export const GET = listOf('GET /api/v1/cases/[id]/plans', {
  rows: async ({ db, params }) => {
    const booked = await findCase(db, params.id);
    return booked && listPlanVersions(db, booked.id);
  },
  keyOf: ({ version }) => [version],
  newestFirst: true,
});

import { pagesOf } from '@/app/api/v1/_reading/list';
import { usesRecorded } from '@/db/queries/api/usesRecorded';

/** Cases with a record of what was used; what it says is told with the case. */
export const GET = pagesOf('GET /api/v1/use-records', {
  rows: ({ db }, { after, limit }) =>
    usesRecorded(db, { after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ caseId }) => [caseId],
});

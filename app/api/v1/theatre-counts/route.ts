import { pagesOf } from '@/app/api/v1/_reading/list';
import { theatreCountsRecorded } from '@/db/queries/api/theatreCountsRecorded';

/** Counts in theatre, the last begun first; their figures are told with the case. */
export const GET = pagesOf('GET /api/v1/theatre-counts', {
  rows: ({ db }, { after, limit }) =>
    theatreCountsRecorded(db, { after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ id }) => [id],
});

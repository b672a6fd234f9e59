import { oneOf } from '@/app/api/v1/_reading/one';
import { findTheatreCountRecorded } from '@/db/queries/api/theatreCountsRecorded';

/** One count in theatre: of which case, by which two and when. */
export const GET = oneOf('GET /api/v1/theatre-counts/[id]', { what: 'count' }, ({ db, params }) =>
  findTheatreCountRecorded(db, params.id),
);

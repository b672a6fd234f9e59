import { oneOf } from '@/app/api/v1/_reading/one';
import { countScreen } from '@/db/queries/shelf/countScreen';

/** One count of the shelf, as far as whoever asks may see it: a counter sees no figure of the record. */
export const GET = oneOf('GET /api/v1/stock-counts/[id]', { what: 'count' }, ({ db, params }) =>
  countScreen(db, params.id),
);

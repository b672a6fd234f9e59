import { listOf } from '@/app/api/v1/_reading/list';
import { theatreLeads } from '@/db/queries/theatre/theatreSessions';

/** Every theatre with the minutes its sets have to be there before a case. */
export const GET = listOf('GET /api/v1/theatre-list/theatres', {
  rows: ({ db }) => theatreLeads(db),
  keyOf: ({ id }) => [id],
});

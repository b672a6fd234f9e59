import { oneOf } from '@/app/api/v1/_reading/one';
import { theatreLeads } from '@/db/queries/theatre/theatreSessions';

/** One theatre with the minutes its sets have to be there before a case. */
export const GET = oneOf(
  'GET /api/v1/theatre-list/theatres/[id]',
  { what: 'theatre' },
  async ({ db, params }) => (await theatreLeads(db)).find(({ id }) => id === params.id) ?? null,
);

import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { searchCatalogue } from '@/db/queries/catalogueSearch';
import { searchFrom } from '@/lib/catalogue/search';

/** The rows a search leaves, for the list as it is typed in. What makes no sense in the address is left out of it. */
export const GET = endpoint('GET /api/catalogue/search', async ({ db, request }) => {
  const rows = await searchCatalogue(db, searchFrom(new URL(request.url).searchParams));
  return jsonAnswer({ rows });
});

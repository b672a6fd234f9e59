import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { servedCatalogue } from '@/app/catalogue/served-catalogue';

/** One page of what a search leaves, for the list as it is typed in. What makes no sense in the address is left out of it. */
export const GET = endpoint('GET /api/v1/catalogue/search', async ({ db, request }) =>
  jsonAnswer(await servedCatalogue(db, new URL(request.url).searchParams)),
);

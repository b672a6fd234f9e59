import { answerSearch } from '@/app/_server/fhir/answers';
import { fhirAnswer, fhirEndpoint } from '@/app/_server/fhir/door';

/** A search among the resources of one type, in pages. */
export const GET = fhirEndpoint('GET /api/v1/fhir/[type]', async ({ db, frame, params, request }) =>
  fhirAnswer(
    await answerSearch(db, frame, {
      type: params.type,
      params: new URL(request.url).searchParams,
    }),
  ),
);

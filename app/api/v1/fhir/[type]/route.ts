import { z } from 'zod';
import { answerSearch } from '@/app/_server/fhir/answers';
import { fhirAnswer, fhirEndpoint } from '@/app/_server/fhir/door';

/** Which parameters a type knows, its part of the CapabilityStatement says; one that is not known is refused. */
const search = z.looseObject({
  _count: z.coerce.number().int().optional().describe('How many resources a page has.'),
});

/** A search among the resources of one type, in pages. */
export const GET = fhirEndpoint(
  'GET /api/v1/fhir/[type]',
  { query: search },
  async ({ db, frame, params, request }) =>
    fhirAnswer(
      await answerSearch(db, frame, {
        type: params.type,
        params: new URL(request.url).searchParams,
      }),
    ),
);

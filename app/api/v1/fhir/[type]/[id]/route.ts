import { answerRead } from '@/app/_server/fhir/answers';
import { fhirAnswer, fhirEndpoint } from '@/app/_server/fhir/door';

/** One resource by its id. */
export const GET = fhirEndpoint('GET /api/v1/fhir/[type]/[id]', {}, async ({ db, frame, params }) =>
  fhirAnswer(await answerRead(db, frame, { type: params.type, id: params.id })),
);

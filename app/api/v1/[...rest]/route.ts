import { noSuchInteraction } from '@/app/_server/fhir/answers';
import { fhirAnswer } from '@/app/_server/fhir/door';
import { noSuch } from '@/app/_server/outcome-answer';

const FHIR = /^\/api\/v1\/fhir(\/|$)/;

/** What no other route of the API answers is told so as everything else of it is, under FHIR as FHIR tells it, and not by a page. */
const nothing = (request: Request) =>
  FHIR.test(new URL(request.url).pathname)
    ? fhirAnswer(noSuchInteraction)
    : noSuch('address in this API: /api-docs lists them');

export { nothing as DELETE, nothing as GET, nothing as PATCH, nothing as POST, nothing as PUT };

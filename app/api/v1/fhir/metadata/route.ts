import { otherFormat } from '@/app/_server/fhir/answers';
import { serviceBase } from '@/app/_server/fhir/base';
import { fhirAnswer, fhirResponse } from '@/app/_server/fhir/door';
import { capabilityStatement } from '@/lib/fhir/capabilityStatement';

export const dynamic = 'force-dynamic';

/** What the service can do. A client reads it before it signs in. */
export function GET(request: Request) {
  const other = otherFormat(request);
  return other ? fhirAnswer(other) : fhirResponse(capabilityStatement({ base: serviceBase(request) }));
}

import 'server-only';
import type { Frame } from '@/lib/fhir/frame';
import { type OperationOutcome, operationOutcome } from '@/lib/fhir/operationOutcome';
import type { Endpoint } from '@/lib/people/access';
import { carrying, type Answer as HttpAnswer } from '../answer';
import { now } from '../clock';
import { type About, type Asked, endpoint } from '../enter';
import { hospitalName } from '../hospital';
import { type Answer, otherFormat } from './answers';
import { serviceBase } from './base';

/** A resource of FHIR R5 as JSON, or several. Which elements each has, the CapabilityStatement and `docs/fhir.md` say. */
export interface FhirJson {
  resourceType: string;
}
type FhirAnswer = HttpAnswer<FhirJson>;

type FhirEndpoint = Extract<Endpoint, `GET /api/v1/fhir/${string}`>;
/**
 * The door of the FHIR service: who is here is asked as everywhere else, in this one place, and what the door itself refuses is
 * told as FHIR tells it.
 */
export function fhirEndpoint<K extends FhirEndpoint>(
  key: K,
  about: About,
  handle: (asked: Asked<K> & { frame: Frame }) => Promise<FhirAnswer> | FhirAnswer,
) {
  const guarded = endpoint(key, (asked) => {
    const frame = { base: serviceBase(asked.request), hospital: hospitalName(), now: now() };
    const other = otherFormat(asked.request);
    if (other) return fhirAnswer(other);
    return handle({ ...asked, frame });
  });
  const answer = async (...given: Parameters<typeof guarded>): Promise<FhirAnswer> => {
    const answered = await guarded(...given);
    if (answered.headers.get('content-type') !== 'application/problem+json') return answered;
    const { errors } = (await answered.json()) as { errors: Parameters<typeof operationOutcome>[0] };
    const told = fhirResponse(operationOutcome(errors), answered.status);
    const challenge = answered.headers.get('www-authenticate');
    if (challenge !== null) told.headers.set('WWW-Authenticate', challenge);
    return told;
  };
  return Object.assign(answer, { about });
}

export const fhirAnswer = ({ body, status }: Answer): FhirAnswer => fhirResponse(body, status);

/** A resource as HTTP has it; nothing keeps it on the way. */
export function fhirResponse(body: object | OperationOutcome, status = 200): FhirAnswer {
  return carrying(
    new Response(JSON.stringify(body), {
      status,
      headers: {
        'Content-Type': 'application/fhir+json; charset=utf-8',
        'Cache-Control': 'no-store, no-transform',
      },
    }),
  );
}

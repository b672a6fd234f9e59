import 'server-only';
import type { Frame } from '@/lib/fhir/frame';
import { type OperationOutcome, operationOutcome } from '@/lib/fhir/operationOutcome';
import type { Endpoint } from '@/lib/people/access';
import { now } from '../clock';
import { type Asked, endpoint } from '../enter';
import { hospitalName } from '../hospital';
import { type Answer, otherFormat } from './answers';
import { serviceBase } from './base';

type FhirEndpoint = Extract<Endpoint, `GET /api/v1/fhir/${string}`>;
/**
 * The door of the FHIR service: who is here is asked as everywhere else, in this one place, and what the door itself refuses is
 * told as FHIR tells it.
 */
export function fhirEndpoint<K extends FhirEndpoint>(
  key: K,
  handle: (asked: Asked<K> & { frame: Frame }) => Promise<Response> | Response,
) {
  const guarded = endpoint(key, (asked) => {
    const frame = { base: serviceBase(asked.request), hospital: hospitalName(), now: now() };
    const other = otherFormat(asked.request);
    if (other) return fhirAnswer(other);
    return handle({ ...asked, frame });
  });
  return async (...given: Parameters<typeof guarded>): Promise<Response> => {
    const answer = await guarded(...given);
    if (answer.headers.get('content-type') !== 'application/problem+json') return answer;
    const { errors } = (await answer.json()) as { errors: Parameters<typeof operationOutcome>[0] };
    return fhirResponse(operationOutcome(errors), answer.status);
  };
}

export const fhirAnswer = ({ body, status }: Answer): Response => fhirResponse(body, status);

/** A resource as HTTP has it; nothing keeps it on the way. */
export function fhirResponse(body: object | OperationOutcome, status = 200): Response {
  return new Response(JSON.stringify(body), {
    status,
    headers: {
      'Content-Type': 'application/fhir+json; charset=utf-8',
      'Cache-Control': 'no-store, no-transform',
    },
  });
}

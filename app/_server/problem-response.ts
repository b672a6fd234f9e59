import { problemDetails } from '@/lib/calculations/problemDetails';
import { failed, ok, type Problem, type Result } from '@/lib/identity/result';
import type { PlanRefusal } from '@/lib/plans/refusal';

const TYPE = 'application/problem+json';

/** An RFC 9457 answer that lists every problem with its path. `more` carries members of our own beside it. */
export function problemResponse(
  status: number,
  title: string,
  problems: readonly Problem[],
  more: Record<string, unknown> = {},
): Response {
  const detail = problems.map(({ message }) => message).join(' ') || title;
  const body = { ...problemDetails({ title, status, detail }, problems), ...more };
  return Response.json(body, { status, headers: { 'Content-Type': TYPE } });
}

/** The body of a request as JSON; malformed JSON is a problem in words, not an exception. */
export async function readJson(request: Request): Promise<Result<unknown>> {
  try {
    return ok(await request.json());
  } catch {
    return failed({ path: [], code: 'malformed-json', message: 'The body is not JSON.' });
  }
}

const REFUSED: Record<PlanRefusal['because'], { status: number; title: string }> = {
  notFound: { status: 404, title: 'Not found' },
  notPermitted: { status: 403, title: 'Not permitted' },
  frozen: { status: 409, title: 'A confirmed plan never changes' },
  conflict: { status: 409, title: 'Somebody else saved meanwhile' },
  invalid: { status: 422, title: 'The plan can’t be taken as it is' },
};

/** A refused write to a plan, with the plan as it stands where both values must be shown. */
export function refusalResponse(
  { because, problems, current }: PlanRefusal,
  writer: string | null,
): Response {
  const { status, title } = REFUSED[because];
  return problemResponse(status, title, problems, { because, current, currentWriter: writer });
}

import 'server-only';
import type { z } from 'zod';
import type { Outcome, Refusal } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import type { Answer, Refused } from './answer';
import { jsonAnswer } from './json-answer';
import { problemResponse, readJsonBody } from './problem-response';

const REFUSED: Record<Refusal<unknown>['because'], { status: number; title: string }> = {
  notFound: { status: 404, title: 'Not found' },
  notPermitted: { status: 403, title: 'Not permitted' },
  frozen: { status: 409, title: 'Not as it stands' },
  conflict: { status: 409, title: 'Somebody else saved meanwhile' },
  invalid: { status: 422, title: 'This can’t be saved as it is' },
};

/**
 * A write's outcome as HTTP: the value, or why nothing was saved, with the thing as it stands where both must be shown.
 * `more` carries members of our own beside a refusal.
 */
export function outcomeAnswer(
  outcome: { ok: false; refusal: Refusal<unknown> },
  status?: number,
  more?: Record<string, unknown>,
): Refused;
export function outcomeAnswer<T, C, S extends number = 200>(
  outcome: Outcome<T, C>,
  status?: S,
  more?: Record<string, unknown>,
): Answer<T, S>;
export function outcomeAnswer(
  outcome: Outcome<unknown, unknown>,
  status = 200,
  more: Record<string, unknown> = {},
): Response {
  if (outcome.ok) return jsonAnswer(outcome.value, { status });
  const { because, problems, present } = outcome.refusal;
  const current = outcome.refusal.current ?? (present === undefined ? null : { revision: present });
  const head = REFUSED[because];
  return problemResponse(head.status, head.title, problems, { because, current, ...more });
}

/** No body of these writes is longer: 600 lines with their substitutes and twelve constructs. */
const MOST_BYTES = 1_000_000;

/** The body of a request against a schema; what is wrong with it is an answer that lists every fault. */
export async function readBody<S extends z.ZodType>(
  request: Request,
  schema: S,
  mostBytes = MOST_BYTES,
): Promise<{ ok: true; value: z.output<S> } | { ok: false; response: Refused }> {
  const body = await readJsonBody(request, mostBytes);
  if (!body.ok) return { ok: false, response: body.answer };
  const parsed = schema.safeParse(body.value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const { status, title } = REFUSED.invalid;
  return { ok: false, response: problemResponse(status, title, problemsFromZod(parsed.error)) };
}

/** Answers an address whose id is none of ours. */
export const noSuch = (what: string): Refused =>
  problemResponse(404, 'Not found', [{ path: [], code: 'not-found', message: `There is no such ${what}.` }]);

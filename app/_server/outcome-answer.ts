import 'server-only';
import type { z } from 'zod';
import { problemDetails } from '@/lib/calculations/problemDetails';
import type { Outcome, Refusal } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { problemAnswer, problemsAnswer, readJsonBody } from './problems';

const REFUSED: Record<Refusal<unknown>['because'], { status: number; title: string }> = {
  notFound: { status: 404, title: 'Not found' },
  notPermitted: { status: 403, title: 'Not permitted' },
  frozen: { status: 409, title: 'Not as it stands' },
  conflict: { status: 409, title: 'Somebody else saved meanwhile' },
  invalid: { status: 422, title: 'This can’t be saved as it is' },
};

/** A write's outcome as HTTP: the value, or why nothing was saved, with the thing as it stands where both must be shown. */
export function outcomeAnswer<T, C>(outcome: Outcome<T, C>, status = 200): Response {
  if (outcome.ok) return Response.json(outcome.value, { status, headers: { 'Cache-Control': 'no-store' } });
  const { because, problems, current } = outcome.refusal;
  const head = REFUSED[because];
  const detail = problems.map(({ message }) => message).join(' ') || head.title;
  return problemAnswer({ ...problemDetails({ ...head, detail }, problems), because, current } as never);
}

/** No body of these writes is longer: 600 lines with their substitutes and twelve constructs. */
const MOST_BYTES = 1_000_000;

/** The body of a request against a schema; what is wrong with it is an answer that lists every fault. */
export async function readBody<S extends z.ZodType>(
  request: Request,
  schema: S,
): Promise<{ ok: true; value: z.output<S> } | { ok: false; response: Response }> {
  const body = await readJsonBody(request, MOST_BYTES);
  if (!body.ok) return { ok: false, response: problemAnswer(body.problems) };
  const parsed = schema.safeParse(body.value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const head = {
    title: 'This can’t be saved as it is',
    status: 422,
    detail: 'Some of what was sent is not as it must be.',
  };
  return { ok: false, response: problemsAnswer(head, problemsFromZod(parsed.error)) };
}

/** Answers an address whose id is none of ours. */
export const noSuch = (what: string): Response =>
  problemsAnswer({ title: 'Not found', status: 404, detail: `There is no such ${what}.` });

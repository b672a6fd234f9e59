import 'server-only';
import { z } from 'zod';
import type { Endpoint } from '@/lib/people/access';
import { apiWords } from '@/lib/wording/api';
import { describedOperation } from './described-api';
import type { About } from './enter';
import { keyedWrite } from './keyed-write';
import { problemResponse, readBytes } from './problem-response';
import type { Access } from './session';

/** No write of the program takes a longer body: a list that comes in, in base64. */
const MOST_BYTES = 6_000_000;
/** How the revision that was seen is called in a body, in the order in which it is looked for. */
const REVISION_MEMBERS = ['baseRevision', 'revision', 'baseVersion'] as const;

type Handle = (access: Access, request: Request) => Promise<Response>;

/**
 * The member of a body that holds the revision that was seen, and whether the act is refused without one; `null` where an
 * act conflicts with nothing, or where only some of its kinds do.
 */
export function revisionMember(body: z.ZodType | undefined): { name: string; needed: boolean } | null {
  if (!(body instanceof z.ZodObject)) return null;
  const name = REVISION_MEMBERS.find((one) => one in body.shape);
  if (name === undefined) return null;
  return { name, needed: !(body.shape[name] as z.ZodType).safeParse(null).success };
}

/**
 * Does a request under what it says beside its body (RFC 9110, 13): a token's write says with `If-Match` which revision it
 * saw, where a page says so in the body, and any write may come with an `Idempotency-Key`. What a token is answered has the
 * new revision as its `ETag`.
 */
export async function underPreconditions(
  access: Access,
  { key, about, request }: { key: Endpoint; about: About; request: Request },
  handle: Handle,
): Promise<Response> {
  const once = request.method === 'GET' ? null : request.headers.get('idempotency-key');
  const revision = access.token === null ? null : revisionMember(about.body);
  if (once !== null && about.answers !== undefined) return refused(400, 'keyless', apiWords.keyless);
  if (once === null && revision === null) return tagged(access, await handle(access, request));
  const bytes = await readBytes(request, MOST_BYTES);
  if (bytes === 'tooLong') return refused(413, 'too-long', apiWords.tooLong);
  const body = revision === null ? bytes : matched(bytes, request.headers.get('if-match'), revision);
  if (body instanceof Response) return body;
  const { url, method, headers, signal } = request;
  // read once already: the handler gets the same again
  const asked = () => new Request(url, { method, headers, signal, ...(body.length > 0 ? { body } : {}) });
  const answer =
    once === null
      ? await handle(access, asked())
      : await keyedWrite(access, { key: once, request, body, status: successOf(key) }, (its) =>
          handle(its, asked()),
        );
  return tagged(access, revision === null ? answer : await mismatch(answer, request.headers.get('if-match')));
}

/** The body with the revision of `If-Match` in it, or why not. What is no JSON object goes on, to be refused in its words. */
function matched(
  bytes: Uint8Array<ArrayBuffer>,
  ifMatch: string | null,
  { name, needed }: { name: string; needed: boolean },
): Uint8Array<ArrayBuffer> | Response {
  if (ifMatch === null && needed) return refused(428, 'revision-needed', apiWords.revisionNeeded);
  const seen = ifMatch === null ? null : /^"(\d{1,15})"$/.exec(ifMatch.trim())?.[1];
  if (seen === undefined) return refused(400, 'revision-form', apiWords.revisionForm);
  try {
    const body: unknown = JSON.parse(new TextDecoder().decode(bytes));
    if (typeof body !== 'object' || body === null || Array.isArray(body)) return bytes;
    const value = seen === null ? ((body as Record<string, unknown>)[name] ?? null) : Number(seen);
    return new TextEncoder().encode(JSON.stringify({ ...body, [name]: value }));
  } catch {
    return bytes;
  }
}

/**
 * A conflict of revisions is what `If-Match` asked about: 412, with the present one as its `ETag`. A conflict of another kind
 * stays 409.
 */
async function mismatch(answer: Response, ifMatch: string | null): Promise<Response> {
  if (answer.status !== 409) return answer;
  const problem = (await answer.clone().json()) as { because?: string; current?: unknown };
  if (problem.because !== 'conflict') return answer;
  const present = revisionOf(problem.current);
  if (present === null || `"${present}"` === ifMatch?.trim()) return answer;
  const headers = new Headers(answer.headers);
  headers.set('ETag', `"${present}"`);
  return new Response(JSON.stringify({ ...problem, status: 412 }), { status: 412, headers });
}

async function tagged(access: Access, answer: Response): Promise<Response> {
  const isJson = answer.headers.get('content-type')?.startsWith('application/json');
  if (access.token === null || !answer.ok || !isJson || answer.headers.has('etag')) return answer;
  const revision = revisionOf(await answer.clone().json());
  if (revision !== null) answer.headers.set('ETag', `"${revision}"`);
  return answer;
}

function revisionOf(value: unknown): number | null {
  if (typeof value !== 'object' || value === null) return null;
  const { revision, version } = value as { revision?: unknown; version?: unknown };
  const found = revision ?? version;
  return typeof found === 'number' ? found : null;
}

/** Under which status an address answers when all is well. */
function successOf(key: Endpoint): number {
  const good = Object.keys(describedOperation(key)?.responses ?? {}).find((status) => status.startsWith('2'));
  return good === undefined ? 200 : Number(good);
}

const refused = (status: number, code: string, message: string): Response =>
  problemResponse(status, 'Not done', [{ path: [], code, message }]);

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

/** The member of a body that holds the revision that was seen, and whether the act is refused without one. */
interface RevisionMember {
  name: string;
  needed: boolean;
}

/** The one of a body of one kind; `null` where its act conflicts with nothing. */
export function revisionMember(body: z.ZodType | undefined): RevisionMember | null {
  if (!(body instanceof z.ZodObject)) return null;
  const name = REVISION_MEMBERS.find((one) => one in body.shape);
  if (name === undefined) return null;
  return { name, needed: !(body.shape[name] as z.ZodType).safeParse(null).success };
}

/** The kinds of a body: those of a union, or its own one. */
const kindsOf = (body: z.ZodType | undefined): z.ZodType[] =>
  body instanceof z.ZodUnion ? (body.options as z.ZodType[]) : body ? [body] : [];

/** Whether an act, or one of the kinds of it, is done on top of a revision. */
export const takesRevision = (body: z.ZodType | undefined): boolean =>
  kindsOf(body).some((kind) => revisionMember(kind) !== null);

/** The one of the kind of body that was sent; `null` where it conflicts with nothing, or is of no kind there is. */
function revisionOfKind(body: z.ZodType | undefined, sent: object): RevisionMember | null {
  if (!(body instanceof z.ZodDiscriminatedUnion)) return revisionMember(body);
  const { discriminator, options } = body.def as unknown as { discriminator: string; options: z.ZodObject[] };
  const its = options.find(
    ({ shape }) =>
      (shape[discriminator] as z.ZodType).safeParse((sent as Record<string, unknown>)[discriminator]).success,
  );
  return revisionMember(its);
}

/**
 * Does a request under what it says beside its body (RFC 9110, 13): with `If-Match` it says which revision it saw, which a
 * token must and a page may, since pages say so in the body; and any write may come with an `Idempotency-Key`. What is
 * answered has the new revision as its `ETag`.
 */
export async function underPreconditions(
  access: Access,
  { key, about, request }: { key: Endpoint; about: About; request: Request },
  handle: Handle,
): Promise<Response> {
  const once = request.method === 'GET' ? null : request.headers.get('idempotency-key');
  const ifMatch = request.headers.get('if-match');
  const onTop = (access.token !== null || ifMatch !== null) && takesRevision(about.body);
  const answered = async (answer: Response) =>
    access.token === null && !onTop ? answer : tagged(onTop ? await mismatch(answer, ifMatch) : answer);
  if (once !== null && about.answers !== undefined) return refused(400, 'keyless', apiWords.keyless);
  if (once === null && !onTop) return answered(await handle(access, request));
  const bytes = await readBytes(request, MOST_BYTES);
  if (bytes === 'tooLong') return refused(413, 'too-long', apiWords.tooLong);
  const body = onTop ? matched(bytes, ifMatch, about.body) : bytes;
  if (body instanceof Response) return body;
  const { url, method, headers, signal } = request;
  // read once already: the handler gets the same again
  const asked = () => new Request(url, { method, headers, signal, ...(body.length > 0 ? { body } : {}) });
  return answered(
    once === null
      ? await handle(access, asked())
      : await keyedWrite(access, { key: once, request, body, status: successOf(key) }, (its) =>
          handle(its, asked()),
        ),
  );
}

/** The body with the revision of `If-Match` in it, or why not. What is no JSON object goes on, to be refused in its words. */
function matched(
  bytes: Uint8Array<ArrayBuffer>,
  ifMatch: string | null,
  schema: z.ZodType | undefined,
): Uint8Array<ArrayBuffer> | Response {
  const seen = ifMatch === null ? null : /^"(\d{1,15})"$/.exec(ifMatch.trim())?.[1];
  if (seen === undefined) return refused(400, 'revision-form', apiWords.revisionForm);
  const body = objectIn(bytes);
  const revision = revisionOfKind(schema, body ?? {});
  if (revision === null) return bytes;
  if (seen === null && revision.needed) return refused(428, 'revision-needed', apiWords.revisionNeeded);
  if (body === null) return bytes;
  const { name } = revision;
  const value = seen === null ? (body[name] ?? null) : Number(seen);
  return new TextEncoder().encode(JSON.stringify({ ...body, [name]: value }));
}

function objectIn(bytes: Uint8Array): Record<string, unknown> | null {
  try {
    const body: unknown = JSON.parse(new TextDecoder().decode(bytes));
    return typeof body === 'object' && !Array.isArray(body) ? (body as Record<string, unknown> | null) : null;
  } catch {
    return null;
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

async function tagged(answer: Response): Promise<Response> {
  const isJson = answer.headers.get('content-type')?.startsWith('application/json');
  if (!answer.ok || !isJson || answer.headers.has('etag')) return answer;
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

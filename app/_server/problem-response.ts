import { type ProblemDetails, problemDetails } from '@/lib/calculations/problemDetails';
import type { Problem } from '@/lib/identity/result';
import { locateJsonProblem } from '@/lib/json/locateJsonProblem';
import { carrying, type Refused } from './answer';

/** Longest body taken unless a route says otherwise: the largest plan or configuration is a tenth of it. */
const MOST_BYTES = 256 * 1024;

/** A problem as HTTP (RFC 9457): its own media type, its status, never kept by a cache. */
export function problemAnswer(details: ProblemDetails, more: Record<string, unknown> = {}): Refused {
  return carrying(
    Response.json(
      { ...details, ...more },
      {
        status: details.status,
        headers: { 'Content-Type': 'application/problem+json', 'Cache-Control': 'no-store' },
      },
    ),
  );
}

/** An RFC 9457 answer that lists every problem with its path. `more` carries members of our own beside it. */
export function problemResponse(
  status: number,
  title: string,
  problems: readonly Problem[],
  more: Record<string, unknown> = {},
): Refused {
  return problemAnswer(
    problemDetails({ title, status, detail: detailOf(problems) || title }, problems),
    more,
  );
}

/** More would not be read: each problem stands in `errors` with its place. */
const MOST_SENTENCES = 5;

/** What is wrong in a few sentences, each said once. */
function detailOf(problems: readonly Problem[]): string {
  const said = [...new Set(problems.map(({ message }) => message))];
  const more = said.length > MOST_SENTENCES ? [`${said.length - MOST_SENTENCES} more are listed.`] : [];
  const sentences = said.slice(0, MOST_SENTENCES).map((text) => {
    const capital = text.charAt(0).toUpperCase() + text.slice(1);
    return /[.!?…]$/.test(capital) ? capital : `${capital}.`;
  });
  return [...sentences, ...more].join(' ');
}

/**
 * The body of a request as JSON. Refused in words, each with its own status: not declared as JSON (415), longer than
 * `mostBytes` (413; it is not read further), or not JSON (400, with line and column).
 */
export async function readJsonBody(
  request: Request,
  mostBytes: number = MOST_BYTES,
): Promise<{ ok: true; value: unknown } | { ok: false; answer: Refused }> {
  const type = request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase() ?? '';
  if (type !== 'application/json' && !type.endsWith('+json')) {
    const sent = type === '' ? 'no content type is given' : `the content type is “${type.slice(0, 60)}”`;
    return refuse(415, 'Not sent as JSON', `Send the input as application/json; ${sent}.`);
  }
  const bytes = await readBytes(request, mostBytes);
  if (bytes === 'tooLong') {
    const limit = `${Math.round(mostBytes / 1024)} kB`;
    return refuse(
      413,
      'The input is too long',
      `At most ${limit} can be sent at once: leave out what does not matter.`,
    );
  }
  const text = textOf(bytes);
  if (text === null)
    return refuse(400, 'The input is not UTF-8', 'JSON is sent as UTF-8, and these bytes are not.');
  const wrong = locateJsonProblem(text);
  if (wrong) {
    const place = `Line ${wrong.line}, column ${wrong.column}: ${wrong.reason}.`;
    const problem: Problem = { path: [], code: 'malformed-json', message: place };
    return { ok: false, answer: problemResponse(400, 'The input is not JSON', [problem]) };
  }
  const value: unknown = JSON.parse(text);
  if (/\\ud[89a-f]/i.test(text) && !isKeepable(value))
    return refuse(
      400,
      'The input holds what is no character',
      'A text has half of a pair of surrogates in it, which is no character and can’t be kept: leave it out.',
    );
  return { ok: true, value };
}

/** Bytes as text, or `null` where they are not UTF-8: nothing is put in the place of what can't be read. */
function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Whether every text in it is kept as it was sent: the store has no half pairs of surrogates. */
function isKeepable(value: unknown): boolean {
  if (typeof value === 'string') return !/\p{Surrogate}/u.test(value);
  if (typeof value !== 'object' || value === null) return true;
  return Object.entries(value).every(([name, inner]) => isKeepable(name) && isKeepable(inner));
}

function refuse(status: number, title: string, message: string): { ok: false; answer: Refused } {
  const code = title.toLowerCase().replaceAll(' ', '-');
  return { ok: false, answer: problemResponse(status, title, [{ path: [], code, message }]) };
}

/** Reads no more than it may, whatever length the request claims. */
export async function readBytes(
  request: Request,
  mostBytes: number,
): Promise<Uint8Array<ArrayBuffer> | 'tooLong'> {
  if (Number(request.headers.get('content-length') ?? 0) > mostBytes) return 'tooLong';
  const reader = request.body?.getReader();
  if (!reader) return new Uint8Array();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.byteLength;
    if (length > mostBytes) {
      await reader.cancel();
      return 'tooLong';
    }
    parts.push(value);
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.byteLength;
  }
  return all;
}

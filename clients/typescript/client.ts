import type { Operations, Problem } from './types';

export type * from './types';

export type OperationKey = keyof Operations;
type Part<K extends OperationKey, P extends string> = Operations[K] extends { [Name in P]: infer Value }
  ? Value
  : never;
/** What an operation answers when all is well. */
export type AnswerOf<K extends OperationKey> = Part<K, 'answer'>;
/** Operations that are read page by page. */
export type PagedKey = {
  [K in OperationKey]: AnswerOf<K> extends { items: unknown[]; next: string | null } ? K : never;
}[OperationKey];
export type ItemOf<K extends PagedKey> = AnswerOf<K> extends { items: (infer Item)[] } ? Item : never;

type Needed<K extends OperationKey, P extends string> = [Part<K, P>] extends [never]
  ? { [Name in P]?: undefined }
  : Record<never, never> extends Part<K, P>
    ? { [Name in P]?: Part<K, P> }
    : { [Name in P]: Part<K, P> };

/** What goes with a request: what its operation takes, and how often and on top of what it is done. */
export type Asked<K extends OperationKey> = Needed<K, 'path'> &
  Needed<K, 'query'> &
  Needed<K, 'body'> & {
    /** The `etag` of what was seen: nothing is done where it has changed meanwhile. */
    ifMatch?: string;
    /** A key of your own: sent again with the same, it is done once and answered as before. */
    once?: string;
    signal?: AbortSignal;
  };
type Given<K extends OperationKey> =
  Record<never, never> extends Asked<K> ? [asked?: Asked<K>] : [asked: Asked<K>];

/** Done, and what was answered; or not done, and why (RFC 9457). */
export type Answered<T> =
  | { ok: true; status: number; value: T; etag: string | null; replayed: boolean }
  | { ok: false; status: number; problem: Problem; etag: string | null; retryAfterSeconds: number | null };

/** Thrown where an answer was counted on and a refusal came. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    readonly problem: Problem,
  ) {
    super(`${status} ${problem.title}: ${problem.detail}`);
    this.name = 'Refused';
  }
}

export interface Connection {
  /** Where the program is, such as `https://kitwright.example`. */
  address: string;
  /** Goes with every request: `Authorization` with a token, or, of somebody who is signed in, the cookie of their session. */
  headers?: Readonly<Record<string, string>>;
  /** How requests are sent; the platform's own when left out. */
  fetch?: (request: Request) => Promise<Response>;
}

/** A client of one installation. Requests are sent as they are asked for; nothing is tried again by itself. */
export function kitwright({ address, headers = {}, fetch: send = (request) => fetch(request) }: Connection) {
  /** Does one operation, named by its method and address as the description has them. */
  async function call<K extends OperationKey>(key: K, ...[asked]: Given<K>): Promise<Answered<AnswerOf<K>>> {
    const response = await send(requestOf(address, headers, key, (asked ?? {}) as Loose));
    const etag = response.headers.get('etag');
    const text = await response.text();
    const isJson = /[/+]json\b/.test(response.headers.get('content-type') ?? '');
    if (response.ok) {
      const value = (text === '' ? null : isJson ? JSON.parse(text) : text) as AnswerOf<K>;
      const replayed = response.headers.get('idempotency-replayed') === 'true';
      return { ok: true, status: response.status, value, etag, replayed };
    }
    const wait = response.headers.get('retry-after');
    return {
      ok: false,
      status: response.status,
      problem: problemOf(response, isJson ? JSON.parse(text) : null),
      etag,
      retryAfterSeconds: wait === null ? null : Number(wait),
    };
  }

  /** As `call`, for where a refusal is a fault: throws `Refused`. */
  async function done<K extends OperationKey>(key: K, ...given: Given<K>): Promise<AnswerOf<K>> {
    const answered = await call(key, ...given);
    if (!answered.ok) throw new Refused(answered.status, answered.problem);
    return answered.value;
  }

  /** Everything of a list, page after page, each fetched as it is come to. */
  async function* every<K extends PagedKey>(key: K, ...[asked]: Given<K>): AsyncGenerator<ItemOf<K>> {
    let cursor: string | null = null;
    do {
      const query: Record<string, unknown> = { ...(asked as Loose | undefined)?.query };
      if (cursor !== null) query.cursor = cursor;
      const page = (await done(key, ...([{ ...asked, query }] as unknown as Given<K>))) as {
        items: ItemOf<K>[];
        next: string | null;
      };
      yield* page.items;
      cursor = page.next;
    } while (cursor !== null);
  }

  return { call, done, every };
}
export type Kitwright = ReturnType<typeof kitwright>;

interface Loose {
  path?: Record<string, unknown>;
  query?: Record<string, unknown>;
  body?: unknown;
  ifMatch?: string;
  once?: string;
  signal?: AbortSignal;
}

function requestOf(
  address: string,
  headers: Readonly<Record<string, string>>,
  key: string,
  asked: Loose,
): Request {
  const [method = 'GET', pattern = '/'] = key.split(' ');
  const path = pattern.replaceAll(/\{(\w+)\}/g, (_, name: string) =>
    encodeURIComponent(String(asked.path?.[name])),
  );
  const url = new URL(path, address);
  for (const [name, value] of Object.entries(asked.query ?? {}))
    if (value !== undefined) url.searchParams.set(name, String(value));
  return new Request(url, {
    method,
    headers: {
      Accept: 'application/json',
      ...headers,
      ...(asked.body === undefined ? {} : { 'Content-Type': 'application/json' }),
      ...(asked.ifMatch === undefined ? {} : { 'If-Match': asked.ifMatch }),
      ...(asked.once === undefined ? {} : { 'Idempotency-Key': asked.once }),
    },
    ...(asked.body === undefined ? {} : { body: JSON.stringify(asked.body) }),
    ...(asked.signal === undefined ? {} : { signal: asked.signal }),
  });
}

/** The problem an answer tells; what something between here and the program refused is told as one too. */
function problemOf({ status, statusText }: Response, told: unknown): Problem {
  const problem = told as Partial<Problem> | null;
  if (typeof problem?.title === 'string' && typeof problem.detail === 'string') return problem as Problem;
  return { type: 'about:blank', title: statusText || 'Refused', status, detail: `The answer was ${status}.` };
}

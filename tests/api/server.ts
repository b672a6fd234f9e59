import { readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { onTestFinished } from 'vitest';
import { type ActingAnswer, type Kitwright, kitwright } from '@/clients/typescript/client';
import { type Database, openDatabase } from '@/db/client';
import { issueToken } from '@/db/operations/api/issue-token';
import { newToken } from '@/db/secrets';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import type { Act } from '@/lib/people/permissions';
import { PEOPLE } from '@/seed/hospital/people';
import { demoDatabaseFile } from '../setup/database';
import { requestAsked } from '../setup/next-headers';
import { againstContract, described } from './contract';

/** A route of the program as the framework calls it. */
type Handler = (
  request: Request,
  context: { params: Promise<Record<string, string | string[]>> },
) => Promise<Response>;

const API = join(process.cwd(), 'app/api/v1');

/** Every route of the API: its address with places in brackets, and its file. */
export const ROUTES: readonly { address: string; file: string }[] = readdirSync(API, {
  recursive: true,
  encoding: 'utf8',
})
  .filter((path) => path.endsWith('/route.ts'))
  .map((path) => ({
    address: `/${relative(join(process.cwd(), 'app'), dirname(join(API, path)))}`,
    file: join(API, path),
  }))
  .sort((a, b) => a.address.localeCompare(b.address));

export async function handlerOf(address: string, method: string): Promise<Handler> {
  const route = ROUTES.find((one) => one.address === address);
  if (!route) throw new Error(`no route ${address}`);
  const module = (await import(route.file)) as Record<string, Handler | undefined>;
  const handler = module[method];
  if (!handler) throw new Error(`${address} has no ${method}`);
  return handler;
}

/** A place in brackets is weaker than a word, and the catch-all is weakest: as the framework chooses. */
function matched(path: string): { address: string; params: Record<string, string | string[]> } {
  const parts = path.split('/').slice(1);
  const found = ROUTES.flatMap(({ address }) => {
    const names = address.split('/').slice(1);
    const rest = names.at(-1)?.startsWith('[...') === true;
    if (rest ? parts.length < names.length : parts.length !== names.length) return [];
    const params: Record<string, string | string[]> = {};
    let rank = '';
    for (const [at, name] of names.entries()) {
      if (name.startsWith('[...')) {
        params[name.slice(4, -1)] = parts.slice(at);
        rank += '2';
      } else if (name.startsWith('[')) {
        params[name.slice(1, -1)] = decodeURIComponent(parts[at] ?? '');
        rank += '1';
      } else if (name !== parts[at]) return [];
      else rank += '0';
    }
    return [{ address, params, rank }];
  }).sort((a, b) => (a.rank < b.rank ? -1 : 1));
  const [best] = found;
  if (!best) throw new Error(`nothing answers ${path}`);
  return best;
}

export interface ApiServer {
  db: Database;
  /** Sends a request with a token to whichever route answers its address. */
  send(method: string, path: string, given?: Given): Promise<Response>;
  /** The client of the API as a system uses it, by a token. */
  byToken(token: string): Kitwright;
  /** The client as somebody of the demo who signed in, with how what they enter by hand is marked as theirs. */
  asPerson(person: (typeof PEOPLE)[number]['id']): Promise<Person>;
  /** Issues a token of somebody of the demo. */
  token(person: (typeof PEOPLE)[number]['id'], scope: Act[], days?: number): Promise<string>;
}

/** Somebody who signed in. */
interface Person extends Kitwright {
  /** What their browser sends with every request. */
  headers: { Cookie: string };
  /** Marks what they enter by hand as made in this session, by a page of it. */
  mark: { id: string; ticket: string };
}

interface Given {
  token?: string | null;
  body?: unknown;
  headers?: Record<string, string>;
}

/** A body as it goes over the line, which is not made JSON of first. */
const isAsSent = (body: unknown): body is string | Uint8Array<ArrayBuffer> =>
  typeof body === 'string' || body instanceof Uint8Array;

type Kept = { kitwrightDatabase?: Database };

const SITE = 'http://kitwright.test';

/** Answers a request as the program does; every answer that any test gets is held against the description. */
async function answer(request: Request): Promise<Response> {
  const url = new URL(request.url);
  const { address: route, params } = matched(url.pathname);
  const handler = await handlerOf(route, request.method);
  const sent = await request.clone().text();
  const cookies = new Map(
    (request.headers.get('cookie') ?? '').split('; ').map((one) => {
      const at = one.indexOf('=');
      return [one.slice(0, at), one.slice(at + 1)] as const;
    }),
  );
  const given = new Map<string, string>();
  const response = await requestAsked.run({ headers: request.headers, cookies, given }, () =>
    handler(request, { params: Promise.resolve(params) }),
  );
  for (const [name, value] of given) response.headers.append('set-cookie', `${name}=${value}; Path=/`);
  if (route.includes('[...')) return response;
  const text = await response.clone().text();
  const contentType = response.headers.get('content-type') ?? '';
  const wrong = againstContract(
    { method: request.method, address: described(route) },
    { status: response.status, contentType, text },
    sent === '' ? undefined : JSON.parse(sent),
  );
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  return response;
}

/**
 * The program's own route handlers on a demo hospital of this test's own, called as over HTTP but without a socket.
 *
 * @param file makes the file of the hospital
 */
export async function apiServer(file: () => Promise<string> = demoDatabaseFile): Promise<ApiServer> {
  const path = await file();
  const db = openDatabase(path);
  const kept = globalThis as Kept;
  const before = kept.kitwrightDatabase;
  kept.kitwrightDatabase = db;
  // how the program stands is looked at where its file lies
  const place = process.env.KITWRIGHT_DB;
  process.env.KITWRIGHT_DB = path;
  onTestFinished(() => {
    if (place === undefined) delete process.env.KITWRIGHT_DB;
    else process.env.KITWRIGHT_DB = place;
    if (before) kept.kitwrightDatabase = before;
    else delete kept.kitwrightDatabase;
    db.close();
  });
  const administrator = PEOPLE.find(({ role }) => role === 'administrator');
  if (!administrator) throw new Error('the demo has no administrator');
  let issued = 0;
  return {
    db,
    async send(method, address, { token = null, body, headers = {} } = {}) {
      const url = new URL(address, SITE);
      const request = new Request(url, {
        method,
        headers: {
          ...(token === null ? {} : { Authorization: `Bearer ${token}` }),
          ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
          ...headers,
        },
        ...(body === undefined ? {} : { body: isAsSent(body) ? body : JSON.stringify(body) }),
      });
      return answer(request);
    },
    byToken: (token) =>
      kitwright({ address: SITE, headers: { Authorization: `Bearer ${token}` }, fetch: answer }),
    async asPerson(id) {
      const name = PEOPLE.find((one) => one.id === id)?.name ?? '';
      const response = await answer(
        new Request(new URL('/api/v1/people/sign-in', SITE), {
          method: 'POST',
          headers: { 'Content-Type': 'application/json' },
          body: JSON.stringify({ name, password: DEMO_PASSWORD }),
        }),
      );
      const cookie = response.headers.getSetCookie().find((one) => one.startsWith('__Host-session='));
      if (!response.ok || !cookie) throw new Error(`${id} could not sign in: ${await response.text()}`);
      const headers = { Cookie: cookie.split(';')[0] ?? '' };
      const { sessionId, ticket } = (await response.json()) as ActingAnswer;
      return {
        ...kitwright({ address: SITE, headers, fetch: answer }),
        headers,
        mark: { id: sessionId, ticket },
      };
    },
    async token(personId, scope, days = 30) {
      issued += 1;
      const made = await issueToken({
        db,
        now: new Date().toISOString(),
        newId: (prefix) => `${prefix}_test-${issued}-${Math.random().toString(36).slice(2)}`,
        newToken,
        person: administrator as never,
        entry: { personId, name: `System ${issued} of ${personId}`, scope, days },
      });
      if (!made.ok) throw new Error(made.refusal.problems.map(({ message }) => message).join(' '));
      return made.value.token;
    },
  };
}

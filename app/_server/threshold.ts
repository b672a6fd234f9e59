import 'server-only';
import { createHash } from 'node:crypto';
import type { Database } from '@/db/client';
import { ENDPOINTS, type Endpoint, SCREENS, type Screen } from '@/lib/people/access';
import { peopleWords } from '@/lib/wording/people';
import type { Refused } from './answer';
import { database } from './database';
import type { About } from './enter';
import { problemResponse } from './problem-response';
import { isFromHere } from './same-origin';
import { type PresentSession, presentSession } from './session';
import { storageAnswer } from './storage-answer';

/** What is declared as open to anybody: the way in. */
type OpenTo<Declared> = { [K in keyof Declared]: Declared[K] extends 'anybody' ? K : never }[keyof Declared];
type OpenScreen = OpenTo<typeof SCREENS>;
type OpenEndpoint = OpenTo<typeof ENDPOINTS>;

/** Somebody at the door: who they are already, if anybody. The store is read for the program, not for them. */
export interface Visit {
  db: Database;
  session: PresentSession | null;
}

/** The first line of a page that shows the way in. It hands out nothing of the hospital by itself. */
export async function approach<K extends OpenScreen & Screen>(screen: K): Promise<Visit> {
  if (!Object.hasOwn(SCREENS, screen)) throw new Error(`${screen} is not declared`);
  return { db: database(), session: await presentSession() };
}

/** A route handler of the way in. */
export function openEndpoint<K extends OpenEndpoint & Endpoint, R extends Response>(
  key: K,
  about: About,
  handle: (visit: Visit & { request: Request }) => Promise<R>,
): ((request: Request) => Promise<R | Refused>) & { about: About } {
  if (!Object.hasOwn(ENDPOINTS, key)) throw new Error(`${key} is not declared`);
  const answer = async (request: Request): Promise<R | Refused> => {
    if (!isFromHere(request.headers)) {
      const problem = { path: [], code: 'not-permitted', message: peopleWords.fromElsewhere };
      return problemResponse(403, 'Not permitted', [problem]);
    }
    try {
      return await handle({ db: database(), session: await presentSession(), request });
    } catch (error) {
      return storageAnswer(error);
    }
  };
  return Object.assign(answer, { about });
}

/**
 * A route handler of a monitor's question. It is told no more than whoever can reach the address may know, and is answered
 * also when the database cannot be opened.
 */
export function probeEndpoint(
  key: 'GET /health/live' | 'GET /health/ready' | 'GET /metrics',
  handle: (request: Request) => Promise<Response> | Response,
): (request: Request) => Promise<Response> {
  if (ENDPOINTS[key] !== 'anybody') throw new Error(`${key} is not declared`);
  return async (request) => handle(request);
}

/** What a calendar's reader brings: the secret in the address, and nothing that says who they are. */
interface Secret {
  db: Database;
  request: Request;
  params: { token: string };
  /** Where wrong secrets are counted: a digest of the address the request came from, so that no address is kept. */
  place: string;
}

/** A route handler of something that is open to whoever has its secret address. No cookie is looked at. */
export function secretEndpoint(
  key: 'GET /feeds/[token]',
  handle: (secret: Secret) => Promise<Response>,
): (request: Request, context: { params: Promise<{ token: string }> }) => Promise<Response> {
  if (ENDPOINTS[key] !== 'anybody') throw new Error(`${key} is not declared`);
  return async (request, { params }) =>
    handle({ db: database(), request, params: await params, place: placeOf(request) });
}

/** The last of the forwarded addresses: the one that our own server, or the TLS in front of it, saw. */
function placeOf(request: Request): string {
  const address = request.headers.get('x-forwarded-for')?.split(',').at(-1)?.trim() || 'unknown';
  return `from ${createHash('sha256').update(address).digest('hex').slice(0, 24)}`;
}

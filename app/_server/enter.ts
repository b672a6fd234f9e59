import 'server-only';
import { headers } from 'next/headers';
import { forbidden, redirect } from 'next/navigation';
import type { z } from 'zod';
import { NotPermitted } from '@/db/reader';
import { ENDPOINTS, type Endpoint, type Reach, SCREENS, type Screen } from '@/lib/people/access';
import { PATH_HEADER } from '@/lib/people/path';
import { type Act, may } from '@/lib/people/permissions';
import { NEEDS_PRESENCE } from '@/lib/people/tokens';
import { peopleWords } from '@/lib/wording/people';
import { tokenWords } from '@/lib/wording/tokens';
import type { Refused } from './answer';
import { accessOfToken, bearerOf } from './by-token';
import { underPreconditions } from './preconditions';
import { problemResponse } from './problem-response';
import { isFromHere } from './same-origin';
import { type Access, presentSession } from './session';
import { storageAnswer } from './storage-answer';

export type { Access } from './session';

/** The first line of every page and server action: who is here. Others are shown the way to sign in, or why not. */
export async function enter(screen: Screen): Promise<Access> {
  const session = await presentSession();
  if (!session) redirect(await wayIn());
  if (session.mustChangePassword && SCREENS[screen] !== 'ownAccount') redirect('/account');
  if (!reaches(session, SCREENS[screen])) forbidden();
  return session;
}

/** Where to sign in, with the way back. */
async function wayIn(): Promise<string> {
  const path = (await headers()).get(PATH_HEADER);
  return path === null || path === '/' ? '/sign-in' : `/sign-in?from=${encodeURIComponent(path)}`;
}

const reaches = ({ person }: Access, reach: Reach): boolean => reach === 'anybody' || may(person, reach);

/** The names in brackets of an address: `id` of `/api/v1/sets/[id]/open`. */
type NameIn<K> = K extends `${string}[${infer Name}]${infer Rest}` ? Name | NameIn<Rest> : never;
type Params<K> = Record<NameIn<K>, string>;
/** What a handler is given: who asks, and for what. */
export type Asked<K> = Access & { request: Request; params: Params<K> };
type Context<K> = { params: Promise<Params<K>> };
/** A handler as the framework calls it, with what is said of it and of what it answers. */
export type Handler<K, R extends Response> = ((request: Request, context: Context<K>) => Promise<R>) & {
  about: About;
};

/** What is said of an endpoint of the API where it is made. Its act is in `access.ts`, its answer in its type. */
export interface About {
  /** The JSON it takes. */
  body?: z.ZodType;
  /** What may stand behind the `?` of its address. */
  query?: z.ZodObject;
  /** What it answers can't be kept and told again: a secret, or what is told as it comes. It takes no Idempotency-Key. */
  answers?: 'secret' | 'stream';
}
type Handle<K, R> = (asked: Asked<K>) => Promise<R> | R;

/** A route handler that only somebody who may reaches: here themselves, or by a token that acts for them. */
export function endpoint<K extends Endpoint, R extends Response>(key: K, handle: Handle<K, R>): Handler<K, R>;
export function endpoint<K extends Endpoint, R extends Response>(
  key: K,
  about: About,
  handle: Handle<K, R>,
): Handler<K, R>;
export function endpoint<K extends Endpoint>(
  key: K,
  ...given: [Handle<K, Response>] | [About, Handle<K, Response>]
): Handler<K, Response> {
  const [about, handle] = given.length === 1 ? [{}, given[0]] : given;
  const reach: Reach = ENDPOINTS[key];
  const answer = async (request: Request, { params }: Context<K>): Promise<Response> => {
    const entered = (await byToken(request, reach)) ?? (await bySession(request, key, reach));
    if (entered instanceof Response) return entered;
    try {
      return await underPreconditions(entered, { key, about, request }, async (access, its) =>
        handle({ ...access, request: its, params: await params }),
      );
    } catch (error) {
      if (error instanceof NotPermitted) return notPermitted(whyNot(entered, error.act));
      return storageAnswer(error);
    }
  };
  return Object.assign(answer, { about });
}

async function bySession(request: Request, key: Endpoint, reach: Reach): Promise<Access | Response> {
  if (!key.startsWith('GET ') && !isFromHere(request.headers)) return notPermitted(peopleWords.fromElsewhere);
  const session = await presentSession();
  if (!session) return notSignedIn();
  if (session.mustChangePassword && reach !== 'ownAccount')
    return notPermitted(peopleWords.changePasswordFirst);
  return reaches(session, reach) ? session : notPermitted(peopleWords.notForRole(session.person.role));
}

/**
 * By the `Authorization` of the request, or `null` where it names no token. What names one is never let in by a cookie
 * instead; no page can be made to send one, so where it comes from is not asked.
 */
async function byToken(request: Request, reach: Reach): Promise<Access | Response | null> {
  const secret = bearerOf(request.headers);
  if (secret === null) return null;
  const access = await accessOfToken(secret);
  if (typeof access === 'string') return notThisToken(access);
  return reaches(access, reach) || reach === 'anybody' ? access : notPermitted(whyNot(access, reach));
}

/** Why somebody may not, in the words for whoever asks: a person here, or a system that holds a token. */
function whyNot({ person, token }: Access, act: Act): string {
  if (token === null) return peopleWords.notForRole(person.role);
  const presence = NEEDS_PRESENCE[act];
  if (presence !== undefined) return tokenWords.presence(presence);
  return may({ role: person.role }, act) ? tokenWords.notInScope(act) : tokenWords.notForRole(person.name);
}

function notSignedIn(): Refused {
  const message = peopleWords.notSignedIn;
  const answer = problemResponse(401, 'Not signed in', [{ path: [], code: 'not-signed-in', message }]);
  // a way in is always told (RFC 9110, 11.6.1); browsers ask nobody for a token
  answer.headers.set('WWW-Authenticate', 'Bearer');
  return answer;
}

function notThisToken(message: string): Refused {
  const answer = problemResponse(401, 'Not this token', [{ path: [], code: 'not-this-token', message }]);
  answer.headers.set('WWW-Authenticate', 'Bearer error="invalid_token"');
  return answer;
}

function notPermitted(message: string): Refused {
  return problemResponse(403, 'Not permitted', [{ path: [], code: 'not-permitted', message }], {
    because: 'notPermitted',
  });
}

import 'server-only';
import { headers } from 'next/headers';
import { forbidden, redirect } from 'next/navigation';
import { NotPermitted } from '@/db/reader';
import { ENDPOINTS, type Endpoint, type Reach, SCREENS, type Screen } from '@/lib/people/access';
import { PATH_HEADER } from '@/lib/people/path';
import { type Act, may } from '@/lib/people/permissions';
import { NEEDS_PRESENCE } from '@/lib/people/tokens';
import { peopleWords } from '@/lib/wording/people';
import { tokenWords } from '@/lib/wording/tokens';
import { accessOfToken, bearerOf } from './by-token';
import { problemResponse } from './problem-response';
import { isFromHere } from './same-origin';
import { type Access, presentSession } from './session';

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
type Handler<K> = (request: Request, context: { params: Promise<Params<K>> }) => Promise<Response>;

/** A route handler that only somebody who may reaches: here themselves, or by a token that acts for them. */
export function endpoint<K extends Endpoint>(
  key: K,
  handle: (asked: Asked<K>) => Promise<Response> | Response,
): Handler<K> {
  const reach: Reach = ENDPOINTS[key];
  return async (request, { params }) => {
    const entered = (await byToken(request, reach)) ?? (await bySession(request, key, reach));
    if (entered instanceof Response) return entered;
    try {
      return await handle({ ...entered, request, params: await params });
    } catch (error) {
      if (error instanceof NotPermitted) return notPermitted(whyNot(entered, error.act));
      throw error;
    }
  };
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

function notSignedIn(): Response {
  const message = peopleWords.notSignedIn;
  return problemResponse(401, 'Not signed in', [{ path: [], code: 'not-signed-in', message }]);
}

function notThisToken(message: string): Response {
  const answer = problemResponse(401, 'Not this token', [{ path: [], code: 'not-this-token', message }]);
  answer.headers.set('WWW-Authenticate', 'Bearer error="invalid_token"');
  return answer;
}

function notPermitted(message: string): Response {
  return problemResponse(403, 'Not permitted', [{ path: [], code: 'not-permitted', message }], {
    because: 'notPermitted',
  });
}

import 'server-only';
import { headers } from 'next/headers';
import { forbidden, redirect } from 'next/navigation';
import { NotPermitted } from '@/db/reader';
import { ENDPOINTS, type Endpoint, type Reach, SCREENS, type Screen } from '@/lib/people/access';
import { PATH_HEADER } from '@/lib/people/path';
import { may } from '@/lib/people/permissions';
import { peopleWords } from '@/lib/wording/people';
import { problemResponse } from './problem-response';
import { isFromHere } from './same-origin';
import { type Access, type PresentSession, presentSession } from './session';
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

const reaches = ({ person }: PresentSession, reach: Reach): boolean =>
  reach === 'anybody' || may(person.role, reach);

/** The names in brackets of an address: `id` of `/api/sets/[id]/open`. */
type NameIn<K> = K extends `${string}[${infer Name}]${infer Rest}` ? Name | NameIn<Rest> : never;
type Params<K> = Record<NameIn<K>, string>;
/** What a handler is given: who asks, and for what. */
export type Asked<K> = Access & { request: Request; params: Params<K> };
type Handler<K> = (request: Request, context: { params: Promise<Params<K>> }) => Promise<Response>;

/** A route handler that only somebody who may reaches. */
export function endpoint<K extends Endpoint>(
  key: K,
  handle: (asked: Asked<K>) => Promise<Response> | Response,
): Handler<K> {
  const reach: Reach = ENDPOINTS[key];
  const writes = !key.startsWith('GET ');
  return async (request, { params }) => {
    if (writes && !isFromHere(request.headers)) return notPermitted(peopleWords.fromElsewhere);
    const session = await presentSession();
    if (!session) return notSignedIn();
    if (session.mustChangePassword && reach !== 'ownAccount')
      return notPermitted(peopleWords.changePasswordFirst);
    if (!reaches(session, reach)) return notPermitted(peopleWords.notForRole(session.person.role));
    try {
      return await handle({ ...session, request, params: await params });
    } catch (error) {
      if (error instanceof NotPermitted) return notPermitted(peopleWords.notForRole(session.person.role));
      return storageAnswer(error);
    }
  };
}

function notSignedIn(): Response {
  const message = peopleWords.notSignedIn;
  return problemResponse(401, 'Not signed in', [{ path: [], code: 'not-signed-in', message }]);
}

function notPermitted(message: string): Response {
  return problemResponse(403, 'Not permitted', [{ path: [], code: 'not-permitted', message }], {
    because: 'notPermitted',
  });
}
